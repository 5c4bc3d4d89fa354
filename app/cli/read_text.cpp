#include "app/cli/read_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

#include "models/leiden.h"
#include "models/reading.h"
#include "models/settling_words.h"

namespace cli {

namespace {

constexpr double hardly_any = 0.01;  // candidates below it are told together

// How many characters stand in one state; `open` when some stretch does not say.
struct StateCount {
    int least = 0;
    bool open = false;
};

std::string counted(const models::Line& line)
{
    std::array<StateCount, 5> of_state{};
    for (const models::Cell& cell : line.cells) {
        StateCount& count = of_state[static_cast<std::size_t>(cell.state)];
        count.least += std::max(0, cell.least);
        count.open |= cell.most != cell.least;
    }
    const auto of = [&](models::CellState state) {
        return of_state[static_cast<std::size_t>(state)];
    };
    std::string words;
    const auto add = [&](const StateCount& count, const char* what) {
        if (count.open)
            words += count.least > 1 ? ", " + std::to_string(count.least) + " or more " + what
                                     : std::string(", an unknown number ") + what;
        else if (count.least > 0)
            words += ", " + std::to_string(count.least) + " " + what;
    };
    add(of(models::CellState::Doubtful), "unsure");
    add(of(models::CellState::Traces), "faint");
    add(of(models::CellState::Lost), "lost");
    add(of(models::CellState::Restored), "restored");
    return words;
}

bool holdsLetters(const flow::StampExamination& stamp)
{
    for (const models::Line& line : stamp.proposal.lines)
        for (const models::Cell& cell : line.cells)
            if (!cell.alternatives.empty())
                return true;
    return false;
}

std::string yearsInWords(const models::Candidate& candidate)
{
    if (candidate.years.empty())
        return "undated";
    std::string words;
    for (std::size_t i = 0; i < candidate.years.size() && i < 3; ++i) {
        const models::YearShare& share = candidate.years[i];
        if (i > 0 && share.probability < 0.01)
            break;
        words += (i > 0 ? ", " : "") + std::to_string(share.year) + " (" +
                 percent(share.probability) + ")";
    }
    return words;
}

// "upright", "turned 90 degrees clockwise".
std::string turnInWords(double up_deg)
{
    const long turn = std::lround(std::remainder(up_deg, 360));
    if (turn == 0)
        return "upright";
    return "turned " + std::to_string(std::labs(turn)) +
           (std::labs(turn) == 1 ? " degree " : " degrees ") +
           (turn > 0 ? "clockwise" : "anticlockwise");
}

void printExaminedStamp(std::ostream& out, const flow::StampExamination& stamp, std::size_t number)
{
    out << "  stamp " << number << " (" << percent(stamp.outline.score) << " sure), "
        << turnInWords(stamp.enhanced.rectified.up_deg) << "\n";
    for (const models::Line& line : stamp.proposal.lines)
        out << "    " << lineInWords(line) << "\n";
}

}  // namespace

std::string percent(double probability)
{
    if (probability < 0.01)
        return "under 1 %";
    if (probability > 0.99)
        return "over 99 %";
    return std::to_string(std::lround(probability * 100)) + " %";
}

std::string lineInWords(const models::Line& line)
{
    return models::toLeiden(line) + "   (" + percent(models::lineCertainty(line)) + " sure" +
           counted(line) + ")";
}

std::string datesInWords(const std::vector<models::DateMeaning>& dates)
{
    std::string words;
    for (const models::DateMeaning& date : dates)
        words.append(words.empty() ? "" : ", ")
            .append(date.edtf + " (" + percent(date.probability) + ")");
    return words;
}

void printCandidates(std::ostream& out, const models::CandidateList& candidates,
                     const std::string& indent)
{
    double others = candidates.other_makers;
    for (const models::Candidate& candidate : candidates.candidates) {
        if (candidate.probability < hardly_any) {
            others += candidate.probability;
            continue;
        }
        out << indent << percent(candidate.probability) << "  " << candidate.maker << " ["
            << candidate.maker_id << "], " << yearsInWords(candidate) << "\n";
        for (const std::string& reason : candidate.reasons)
            out << indent << "      " << reason << "\n";
    }
    out << indent << percent(candidates.unknown_maker) << "  a maker that is not in the register; "
        << percent(others) << "  others of the register\n";
}

void printSettling(std::ostream& out, const models::CandidateList& candidates,
                   const std::string& indent)
{
    if (!candidates.settling)
        return;
    const models::SettlingWords words = models::settlingInWords(*candidates.settling);
    out << indent << words.where << "\n";
    for (const std::string& meaning : words.meanings)
        out << indent << "      " << meaning << "\n";
}

void printExamination(std::ostream& out, const std::string& photo,
                      const flow::Examination& examination)
{
    out << photo << "\n";
    for (const std::string& warning : examination.photo.warnings)
        out << "  note: " << warning << "\n";
    if (examination.stamps.empty()) {
        out << "  no stamp was found; point one out with --outline, or move the lamp to the side "
               "and take another photograph\n";
        return;
    }
    std::size_t read = 0, unread = 0;
    for (const flow::StampExamination& stamp : examination.stamps) {
        if (holdsLetters(stamp))
            printExaminedStamp(out, stamp, ++read);
        else
            ++unread;
    }
    if (unread > 0)
        out << "  " << unread
            << (unread == 1 ? " place that may be a stamp" : " places that may be stamps")
            << ", not a letter of it read\n";
    if (unread == examination.stamps.size()) {
        out << "  nothing read: it can be any maker's\n";
        return;
    }
    out << "  can mean\n";
    printCandidates(out, examination.candidates, "    ");
    printSettling(out, examination.candidates, "    ");
}

void printTruth(std::ostream& out, const Truth& truth, const models::MakerRegister& known)
{
    if (truth.no_stamp) {
        out << "  truth: no stamp\n";
        return;
    }
    const models::Maker* maker = known.maker(truth.maker_id);
    out << "  truth: " << (maker ? maker->name : "a maker that is not in the register");
    if (!truth.maker_id.empty())
        out << " [" << truth.maker_id << "]";
    out << ", " << (truth.edtf.empty() ? "undated" : truth.edtf) << "\n";
    for (const std::vector<std::string>& stamp : truth.stamps) {
        out << "    ";
        for (std::size_t i = 0; i < stamp.size(); ++i)
            out << (i > 0 ? " / " : "") << stamp[i];
        out << "\n";
    }
}

}  // namespace cli
