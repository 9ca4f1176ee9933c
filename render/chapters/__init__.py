"""The packet's chapters, one file for each: which drawings and tables stand on which sheets, in what order.

A chapter turns a render.desk.Desk into Drafts; what is drawn on them is in the files of render.
"""
