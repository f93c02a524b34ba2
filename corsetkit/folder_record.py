"""Which files of a folder are ours: a small file in it lists what was written there, each with its fingerprint."""

import hashlib
import json
import unicodedata
from dataclasses import dataclass, field

from corsetkit.files import write_whole

RECORD = "files_written.json"
_ABOUT = (
    "corsetkit wrote these files. By this list a later run tells them from yours: it puts new ones in their place, and "
    "keeps every file that is not listed here or was changed since."
)


@dataclass(frozen=True)
class Record:
    """What a folder was written for, such as a wearer, and the fingerprints of its files by their names."""

    of: str = ""
    files: dict = field(default_factory=dict)

    def is_ours(self, path):
        """Whether the file was written by us and is still as it was written: one changed by hand is the user's."""
        return path.name == RECORD or (
            self.files.get(path.name) is not None
            and path.is_file()
            and not path.is_symlink()
            and self.files[path.name] == _fingerprint(path)
        )

    def is_of(self, other):
        """Whether the folder was written for `other`, however her name's letters are stored."""
        return _alike(self.of) == _alike(other)


def write_record(folder, of):
    """List all that stands in a folder of ours, which was written for `of`."""
    files = {one.name: _fingerprint(one) for one in sorted(folder.iterdir())}
    told = json.dumps({"about": _ABOUT, "of": of, "files": files}, indent=1, ensure_ascii=False)
    write_whole(folder / RECORD, f"{told}\n".encode("utf-8", "backslashreplace"))


def read_record(folder):
    """A folder's `Record`, or None where it has none that can be read."""
    try:
        told = json.loads((folder / RECORD).read_bytes())
    except (OSError, ValueError, RecursionError):
        return None
    of, files = (told.get("of"), told.get("files")) if isinstance(told, dict) else (None, None)
    known = isinstance(of, str) and isinstance(files, dict)
    return Record(of, files) if known else None


def _fingerprint(path):
    with open(path, "rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()


def _alike(name):
    return unicodedata.normalize("NFC", name).casefold()
