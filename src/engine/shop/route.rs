//! The route sheet: how one link is made, step by step.
