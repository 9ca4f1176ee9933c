"""What is written: recordings and tables become PDF, DXF, SVG and CSV bytes."""
