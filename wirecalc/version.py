"""The version of the package, said where nobody else can say it."""

VERSION = "0.1.0"
