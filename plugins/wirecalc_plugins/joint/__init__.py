"""Joints: strip, crimp, splice, push-on and ring terminals, and whether they heat."""
