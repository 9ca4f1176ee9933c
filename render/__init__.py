"""What is drawn: boards become views, sections, dimensions and sheets, as recordings of marks."""
