"""Files of a few bytes in place of a wearer's real ones, for tests of what becomes of files, folders and runs.

As a program it is the command with such files: `python quick_files.py TABLE ...`, in QUICK_BUT the writers that stay real.
"""

import os
import runpy

WRITERS = (
    "write_print",
    "write_hand_sheets",
    "write_svg",
    "write_dxf",
    "write_pieces",
    "write_seams",
    "write_sewing",
    "write_lay_pdf",
)


def put_quick(put, but=()):
    """Put writers of a few bytes, and plans that nothing was searched for, into `output`, by `put(module, name, value)`."""
    from corsetkit import output
    from corsetkit.files import write_whole

    def write(finished, path, *_, **__):
        write_whole(path, b"x")
        return type("W", (), {"pages": 1, "said": ()})

    put(output, "plans", lambda finished, cloth, seconds: {"shell": (cloth, seconds)})
    for name in WRITERS:
        if name not in but:
            put(output, name, write)


if __name__ == "__main__":
    put_quick(setattr, os.environ["QUICK_BUT"].split())
    runpy.run_module("corsetkit", run_name="__main__")
