"""A photo of the fireplace as a view of the room: which camera took it, and how surely that is known.

Only arithmetic: no picture is read here, no wood is drawn. Places in a photo are pixels from its upper left
corner, x to the right and y down; the room's axes are those of all boards.
"""
