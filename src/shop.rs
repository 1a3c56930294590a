//! What a shop has and charges: lists of its own stock and its price book, each a CSV file that a spreadsheet opens.
//!
//! Nothing here changes an answer: `engine::report` never reads it. A rod end taken from a list writes its measured
//! sizes into the document, so that a link opens to the same numbers anywhere.
