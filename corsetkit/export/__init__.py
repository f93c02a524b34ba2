"""The finished pattern for other programs: SVG in millimetres, DXF, and lists for spreadsheets."""
