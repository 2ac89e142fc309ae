"""The whole of it as one file for a browser: Python itself, the calculations, and their pages.

`building` writes the file; `inside` and `inside_job` are what runs in it.
"""
