#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

// What a reader (an engine or a person) saw on one stamp: lines of cells. These are the values that
// every part of Weftmark passes on; they know nothing of pixels beyond extents in the rectified
// image, and nothing of makers.
namespace models {

enum class CellState { Clear, Doubtful, Traces, Lost, Restored };

// One character a cell may hold: UTF-8, one user-perceived character. The property arrow is U+2191.
struct Alternative {
    std::string text;
    double certainty = 0;  // 0 to 1; a cell's alternatives sum to at most 1

    bool operator==(const Alternative&) const = default;
};

struct Cell {
    CellState state = CellState::Clear;
    std::vector<Alternative> alternatives;  // best first; may be empty only for Traces and Lost
    int least = 1;                          // characters standing (or once standing) here:
    std::optional<int> most = 1;            //   1..1 for a letter; more only for Traces and Lost;
                                            //   nullopt = unknown
    double left_px = 0, right_px = 0;       // extent in the rectified image; 0,0 when unknown
    std::string by;             // which reader vouches for it: "tesseract", a person's name
    bool erased = false;        // taken out on purpose
    bool struck_over = false;   // set over another character
    bool seen_earlier = false;  // read once, gone from the object now
    bool doubted = false;       // a restoration in doubt
    bool about = false;         // the count was estimated: "about five", least..most around it

    bool operator==(const Cell&) const = default;
};

// Does the text end here, or was it cut off (hem, edge, fold)?
enum class LineEnd { Unknown, Complete, CutOff };

enum class LineRole {
    Unknown,
    Maker,
    Date,
    Size,
    Contract,
    Inspection,
    Pattern,
    Property,
    Owner,
    Other
};

// A stretch of a line with one role: cells first_cell <= i < end_cell.
struct RoleSpan {
    std::size_t first_cell = 0, end_cell = 0;
    LineRole role = LineRole::Unknown;
    double probability = 1;  // 0 to 1, that the role is right

    bool operator==(const RoleSpan&) const = default;
};

// An upright rectangle in rectified pixels; all zero when unknown.
struct Box {
    double x = 0, y = 0, width = 0, height = 0;

    bool operator==(const Box&) const = default;
};

struct Line {
    std::vector<Cell> cells;  // in reading order, spaces between words included as cells " "
    LineEnd left_end = LineEnd::Unknown, right_end = LineEnd::Unknown;
    Box box_px;                   // in the rectified image
    std::vector<RoleSpan> spans;  // what parts of the line are for; empty when nobody has said
    // Probability that the whole line is right, where the reader has calibrated one; otherwise
    // lineCertainty() takes the cells as independent.
    std::optional<double> certainty;

    bool operator==(const Line&) const = default;
};

// What the reader had before it: the object itself, a photograph, or another person's transcript.
enum class Basis { Unknown, ObjectInHand, Photo, Transcript };

struct Reading {
    std::string reader;  // engine and version, or a person's name
    std::vector<Line> lines;
    Basis basis = Basis::Unknown;
    std::string read_at;  // UTC, "1956-03-01T12:00:00Z"; empty when unknown
    std::optional<bool>
        candidates_were_shown;   // makers in view while reading; nullopt: not recorded
    std::string layer;           // name of the enhanced layer read, empty when several or none
    std::string options;         // the reader's settings that differ from its defaults
    std::string weights_sha256;  // of the network that read, empty for others

    bool operator==(const Reading&) const = default;
};

// True when `by` (or a reader's name) is one of the project's engines and not a person.
bool isEngine(const std::string& by);

// A clear cell holding one character with full certainty.
Cell clearCell(std::string character);

// The best guess as plain text: U+FFFD for each unreadable cell that stands for a known number of
// characters (once per character), U+2026 for a gap of unknown or uncertain number. A cell without
// alternatives is unreadable whatever its state; Lost and Traces cells always are.
std::string plainText(const Line& line);

// Probability that the whole line is right: `line.certainty` where the reader gave one, otherwise
// the product of the cells' best certainties; 0 when any cell is unreadable or the line is empty.
double lineCertainty(const Line& line);

}  // namespace models
