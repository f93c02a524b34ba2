"""For an environment that something else has made, conda or a notebook host:

    python -m corsetkit.setup.here

from the clone's root makes the package importable in the environment of that Python and gives its
JupyterLab the course's settings. `python lessons` and `python tests` need no such step.
"""
import sys
import sysconfig

from . import lab, places


def main(prefix=None, folder=None):
    prefix = prefix or sys.prefix
    places.put_on_path(folder or sysconfig.get_path("purelib"))
    lab.write_settings(prefix)
    print("corsetkit can be imported in {}".format(prefix))


if __name__ == "__main__":
    main()
