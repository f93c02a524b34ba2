"""What was written for other programs."""

from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Written:
    """The file, the names its pieces have in it (blocks in a DXF), its layers, and sentences about what was not as asked."""

    path: Path
    pieces: tuple
    layers: tuple
    said: tuple = ()

    def __str__(self):
        return f"{self.path.name}: {len(self.pieces)} pieces, in millimetres; measure the test square after opening it"
