"""What lies in the environment's site-packages, and what of it has gone since the set-up put it there."""
import csv
import os
import shutil

_ENDING = ".dist-info"


def names(site):
    """The packages that are there, each by the folder in which its installer wrote down what it brought."""
    try:
        return sorted(name for name in os.listdir(site) if name.endswith(_ENDING))
    except OSError:
        return []


def lacking(site, known):
    """Those of the packages `known` of which something has gone."""
    return [name for name in known if not _is_whole(site, name)]


def said(known):
    """The packages' names as people write them: shapely-2.0.dist-info is shapely."""
    return ", ".join(name[:-len(_ENDING)].rpartition("-")[0].replace("_", "-") for name in known)


def forget(site, gone):
    """Take away what says that these packages are there, so that an installer puts them in again."""
    for name in gone:
        shutil.rmtree(os.path.join(site, name), ignore_errors=True)


def _is_whole(site, name):
    """Whether of each folder that the package brought its first file is still there: to look at every file takes a second
    or more, and what goes, goes by the folder."""
    try:
        with open(os.path.join(site, name, "RECORD"), encoding="utf-8", newline="") as file:
            brought = [row[0] for row in csv.reader(file) if row]
    except (OSError, ValueError, csv.Error):
        return False
    first = {}
    for path in brought:
        # What Python makes by itself may be swept away.
        if "__pycache__" not in path:
            first.setdefault(path.rpartition("/")[0], path)
    return all(os.path.exists(os.path.join(site, *path.split("/"))) for path in first.values())
