"""The words after `python tests`, sorted for pytest."""
import os

# Options of pytest whose value is a word of its own: that word is not a path to be run.
# (--option=value needs no entry here.)
TAKES_A_WORD = frozenset("""
    -k -m -p -c -o -r -W -n
    --maxfail --max-warnings --durations --durations-min --verbosity --tb --capture --show-capture
    --color --code-highlight --junitxml --junit-xml --junit-prefix --junit-suite-name --pastebin
    --basetemp --rootdir --confcutdir --config-file --override-ini --ignore --ignore-glob --deselect
    --import-mode --assert --last-failed-no-failures --lfnf --pythonwarnings --report-chars --pdbcls
    --doctest-glob --doctest-report
    --log-level --log-format --log-date-format --log-file --log-file-level --log-file-mode
    --log-file-format --log-file-date-format --log-cli-level --log-cli-format --log-cli-date-format
    --log-auto-indent --log-disable
    --hypothesis-profile --hypothesis-seed --hypothesis-verbosity --anyio-mode
    --numprocesses --maxprocesses --max-worker-restart --dist --tx --px --testrunuid --maxschedchunk
    --rsyncdir --rsyncignore
    --nbval-cell-timeout --nbval-kernel-startup-timeout --nbval-kernel-name --nbval-sanitize-with
    --sanitize-with
    """.split())


# All at once is two files at a time, in the order of the files; tests/conftest.py says what stays
# together. Words of the user's own come after these and go before them (-n 0, --pdb).
ALL = ["-n", "2", "--no-loadscope-reorder"]


def sort(given):
    """(options, paths): what starts with a dash, with its value where it takes one, and the rest."""
    options, paths, value_next, only_paths = [], [], False, False
    for word in given:
        if only_paths:
            paths.append(word)
        elif value_next:
            options.append(word)
            value_next = False
        elif word == "--":
            only_paths = True
        elif word.startswith("-") and word != "-":
            options.append(word)
            value_next = word in TAKES_A_WORD
        else:
            paths.append(word)
    return options, paths


def found(path, here, root):
    """A path as the user means it: from where the user stands, else from the clone's root.

    What follows :: names a test inside the file and stays as it is. What lies in neither place is
    handed on, and pytest says that it is not there.
    """
    file, colons, test = path.partition("::")
    for start in (here, root):
        whole = os.path.normpath(os.path.join(start, file))
        if os.path.exists(whole):
            return whole + colons + test
    return path


def for_pytest(given, here, root):
    """The words that pytest gets. Without a path it runs all: tests and, under nbval, lessons."""
    options, paths = sort(given)
    paths = [found(path, here, root) for path in paths]
    if not paths:
        paths = [os.path.join(root, "tests"), os.path.join(root, "lessons")]
        options = ALL + options
    if any(holds_notebooks(path) for path in paths) and not chose_nbval(options):
        options = ["--nbval"] + options
    return options + paths


def holds_notebooks(path):
    file = path.partition("::")[0]
    return file.endswith(".ipynb") or os.path.isdir(file)


def chose_nbval(options):
    return any(word in ("--nbval", "--nbval-lax") for word in options)
