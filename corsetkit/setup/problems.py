"""What can fail in a set-up, in one sentence each."""


class SetupProblem(Exception):
    """The set-up cannot go on; the message is the sentence that the user reads."""

    def __init__(self, sentence, another_way_may_help=False):
        super().__init__(sentence)
        # Without network or disk no other installer helps either; a want that is uv's alone
        # (a cache it may not write, no build of it for this system) leaves plain pip to be tried.
        self.another_way_may_help = another_way_may_help


# Words by which the programs that install say what went wrong; compared in small letters.
# The disk comes first: a full disk also breaks downloads. The network's own words come last,
# because "connection" turns up in many messages.
_DISK = ("no space left on device", "errno 28", "not enough space on the disk", "os error 112",
         "os error 28", "disk quota exceeded")
_IN_USE = ("being used by another process", "os error 32", "winerror 32", "winerror 5",
           "access is denied")
_NOT_ALLOWED = ("permission denied", "errno 13", "read-only file system")
_CERTIFICATE = ("certificate verify failed", "invalid peer certificate", "sslcertverificationerror")
_NETWORK = ("temporary failure in name resolution", "name or service not known", "getaddrinfo failed",
            "nodename nor servname", "newconnectionerror", "connecttimeout", "readtimeout",
            "connection refused", "connection reset", "connection timed out", "network is unreachable",
            "network is down", "dns error", "error sending request", "client error (connect)",
            "operation timed out", "failed to fetch", "max retries exceeded", "proxyerror",
            "failed to establish a new connection", "cannot connect to proxy")


def no_room():
    return SetupProblem(
        "The disk is full: the course needs about 1 GB in its own folder while it is set up; "
        "make room there, then start again.")


def no_network():
    return SetupProblem(
        "The packages could not be fetched, because the network did not answer: connect to the "
        "internet (or ask whoever looks after your network which proxy pip needs), then start "
        "again; only the first start needs the network.")


def no_certificate():
    return SetupProblem(
        "The packages could not be fetched, because the network answers with a certificate that "
        "Python does not know: check the date of this computer, or ask whoever looks after your "
        "network which certificate pip needs, then start again.")


def in_use():
    return SetupProblem(
        "A file of the folder .venv is in use: close the other windows of the course (JupyterLab, "
        "a running lesson, a terminal), then start again.")


def own_python():
    return SetupProblem(
        "The folder .venv has to be made anew, which the Python inside it cannot do: type  "
        "deactivate  or open a new terminal, then start again.")


def not_allowed(folder):
    return SetupProblem(
        "Nothing may be written in {}: move the course into a folder of your own, then start "
        "again.".format(folder), another_way_may_help=True)


def path_too_long(folder, most):
    return SetupProblem(
        "The path {} is too long for Windows: move the course into a folder whose path has at most "
        "{} characters, C:\\corset for instance, then start again.".format(folder, most))


def no_ensurepip(version, debian):
    """Debian and Ubuntu keep ensurepip in a package of its own."""
    if debian:
        return SetupProblem(
            "This Python cannot make a virtual environment, because Debian and Ubuntu keep that "
            "part in a package of its own: run  sudo apt install python{0}-venv  (where there is "
            "none of that name: python3-venv), then start again.".format(version))
    return SetupProblem(
        "This Python cannot make a virtual environment, because it came without pip and ensurepip: "
        "install a complete Python {}, then start again.".format(version))


def of_output(text, folder, otherwise):
    """The problem that a failed program's output tells of; `otherwise` where it tells nothing."""
    told = text.lower()

    def any_of(words):
        return any(word in told for word in words)

    if any_of(_DISK):
        return no_room()
    if any_of(_IN_USE):
        return in_use()
    if any_of(_NOT_ALLOWED):
        return not_allowed(folder)
    if any_of(_CERTIFICATE):
        return no_certificate()
    if any_of(_NETWORK):
        return no_network()
    return SetupProblem(otherwise, another_way_may_help=True)


def of_error(error, folder):
    """The problem that an OSError tells of."""
    import errno
    if error.errno in (errno.ENOSPC, getattr(errno, "EDQUOT", errno.ENOSPC)):
        return no_room()
    # On Windows both "in use" and "not allowed" come as PermissionError; 32 is "in use".
    if getattr(error, "winerror", None) in (5, 32):
        return in_use()
    if error.errno in (errno.EACCES, errno.EPERM, errno.EROFS):
        return not_allowed(folder)
    return SetupProblem("The set-up stopped at {}: {}; put that right, then start again.".format(
        getattr(error, "filename", None) or folder, error.strerror or error))
