"""What an input would have to be: the spans of its values by verdict, all else as given.

`axis.py` has the values that can be tried, `search.py` tries them until no verdict of a criterion
changes unseen between two neighbours, `spans.py` joins them to spans. Whatever stands at an edge
was really run, on both sides of it.
"""
