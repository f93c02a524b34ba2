"""The pattern on paper, at true size: pages for a printer at home, one sheet or a roll at a copy shop,
and the draft by hand."""
