#pragma once

#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "models/exchange/reading_json.h"
#include "models/reading.h"

// Readings as EpiDoc TEI (the EpiDoc Guidelines' markup of lost, illegible, unclear, restored,
// erased and overstruck text; schema version 9.8), for exchange with other editors.
//
// What everyday markup says is written in it: <gap>, <unclear>, <choice>, <supplied>, <del>, <add>,
// <g>, <lb>. What it has no word for stands in attributes, only where it differs from the usual:
//   cert          a certainty, 0 to 1, on <unclear>, <seg> (a clear or restored letter) and <lb>
//   resp="by:X"   who vouches for the cells; X is percent-encoded
//   facs="px:L,R" a cell's extent; "px:X,Y,W,H" a line's box
//   rend          on <lb>: left-complete, left-cut-off, left-open, and the same for the right
//   ana="role:maker/0-5/0.9"   on <lb>: what cells 0 to 4 are for, and how probably
//   <desc type="guess" cert="0.4">B</desc>   in <gap>: what it may have been
// An open gap at a line's end says that the line is cut off there, as in the typed notation.
namespace models {

// The TEI is damaged, not TEI, or says what a reading cannot hold. what() names line, element and
// what should stand there.
class TeiError : public ExchangeError {
public:
    using ExchangeError::ExchangeError;
};

// Markup of an editor that a reading has no place for (names, dates, numbers, abbreviations,
// corrections, damage, ligatures), kept beside the reading so that it is written back.
struct TeiMark {
    std::string element;
    std::vector<std::pair<std::string, std::string>> attributes;
    std::string text;  // letters that do not stand on the object: an expansion, a correction
    // Places first <= i < end. Each line's beginning is one place and each of its cells another,
    // counted through all lines from 0.
    std::size_t first = 0, end = 0;
    std::size_t depth = 0;  // how many of the marks before it enclose it

    bool operator==(const TeiMark&) const = default;
};

struct TeiText {
    Reading reading;
    std::vector<TeiMark> marks;  // in the order in which they open

    bool operator==(const TeiText&) const = default;
};

struct TeiDocument {
    std::string title;
    std::string repository, idno;  // where the object is kept and its number there
    TeiText text;

    bool operator==(const TeiDocument&) const = default;
};

// The content of an edition's <ab>: the lines and the marks. Of the reading's other fields nothing
// is written. Throws std::invalid_argument naming line and cell where a cell breaks the rules of
// reading.h (a letter that counts for several, a number that is not finite, a certainty outside 0
// to 1, a letter that XML cannot hold) or a mark does not fit the lines.
std::string writeTei(const TeiText& text);

// The text that such a fragment says; lines and marks alone. Throws TeiError for anything else:
// no document type, entity or outside file is ever followed, and size and depth are bounded.
TeiText parseTei(const std::string& fragment);

// A whole document, all of the reading in it. Throws as writeTei.
std::string writeTeiDocument(const TeiDocument& document);

// Several documents as one, a <teiCorpus> under this title. Throws as writeTei.
std::string writeTeiCorpus(const std::string& title, const std::vector<TeiDocument>& documents);

// The document back. Of documents by others the edition's text is read, title, repository and
// number; what else their header says is passed over. Throws as parseTei.
TeiDocument parseTeiDocument(const std::string& xml);

}  // namespace models
