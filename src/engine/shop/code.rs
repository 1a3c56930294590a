//! The order code: a short word over everything that is made, so that two people can tell whether they mean the same bar.
