"""The measuring list: one small widget a file. What a value may be is model.parameters' business."""
