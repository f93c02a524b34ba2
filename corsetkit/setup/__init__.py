"""The set-up: makes the virtual environment in the clone. The standard library only.

Started as a folder of its own (`import setup`), never through the package, by lessons/__main__.py,
tests/__main__.py and tests/benchmarks/__main__.py: the package needs Python 3.11, and the set-up
must be able to say so on an older one. It therefore keeps to the grammar of Python 3.6.

    start.py     the Python is looked at, then the environment is made where it is missing
    install.py   virtual environment, uv, the pinned packages
    stamp.py     what a finished set-up remembers
    packages.py  what lies in the environment, and what of it has gone since
    lock.py      two set-ups at once do not meet
    programs.py  pytest, JupyterLab, a benchmark: started and waited for
    places.py    where things lie; the variables that the programs started get
    lab.py       JupyterLab: its settings and how it is started
    words.py     the words after `python tests`, sorted for pytest
    problems.py  what can fail, in one sentence each
    pin.py       makes the pins anew: python -m corsetkit.setup.pin
    here.py      for conda and notebook hosts: python -m corsetkit.setup.here
"""
