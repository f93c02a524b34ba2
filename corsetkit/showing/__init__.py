"""What is drawn for a step, for the pattern and for the print.

One drawing protocol, with SVG, PDF and a recorder behind it. From here to the drawn SVG nothing but the
standard library is imported; the PDF library loads when a print is asked for.
"""
