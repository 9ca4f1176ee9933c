"""What is written: drawings, sheets, boards and lists become PDF, DXF, SVG, OBJ and CSV."""
