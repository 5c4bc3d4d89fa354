#include "models/candidate_reasons.h"

#include <algorithm>
#include <cmath>

#include "models/edtf.h"
#include "models/typed_notation.h"
#include "models/year_weights.h"

namespace models {

namespace {

constexpr double worth_telling = 0.35;  // natural log of a factor: what changes odds by 1.4
constexpr double nearly_as_well = 1.1;  // natural log of a factor 3
constexpr std::size_t most_rivals_named = 3;

struct Reason {
    double weight = 0;  // natural log of the factor, either way
    std::string text;
};

std::string countInWords(std::size_t count)
{
    static constexpr const char* words[] = {"no",  "one",   "two",   "three", "four", "five",
                                            "six", "seven", "eight", "nine",  "ten"};
    return count <= 10 ? words[count] : std::to_string(count);
}

class ReasonTeller {
public:
    ReasonTeller(const MakerPosterior& maker, const Posterior& posterior,
                 const ItemEvidence& evidence, const std::vector<StampEvidence>& stamps,
                 const MakerRegister& known, const CompiledRegister& compiled)
        : maker_(maker),
          posterior_(posterior),
          evidence_(evidence),
          stamps_(stamps),
          known_(known),
          compiled_(compiled)
    {
    }

    std::vector<std::string> tell(const CandidateOptions& options);

private:
    const Maker& registered() const { return known_.makers[maker_.maker]; }
    bool nothingRead() const;
    std::string lettersOf(std::size_t stamp, const MarkPlace& place) const;
    std::string markWithYears() const;
    std::string yearsRead() const;

    void tellLetters();
    void tellRivals();
    void tellYears();
    void tellMarkYears();
    void tellType();
    void tellArchive(const CandidateOptions& options);
    void add(double weight, std::string text)
    {
        if (std::abs(weight) >= worth_telling)
            reasons_.push_back({std::abs(weight), std::move(text)});
    }

    const MakerPosterior& maker_;
    const Posterior& posterior_;
    const ItemEvidence& evidence_;
    const std::vector<StampEvidence>& stamps_;
    const MakerRegister& known_;
    const CompiledRegister& compiled_;
    std::vector<Reason> reasons_;
};

bool ReasonTeller::nothingRead() const
{
    return std::all_of(stamps_.begin(), stamps_.end(),
                       [](const StampEvidence& stamp) { return stamp.isEmpty(); });
}

// The line (or two) in the typed notation, shortened.
std::string ReasonTeller::lettersOf(std::size_t stamp, const MarkPlace& place) const
{
    std::vector<Line> lines;
    for (const Line& line : evidence_.stamps[stamp].lines)
        if (!line.cells.empty())
            lines.push_back(line);
    const auto first = lines.begin() + static_cast<long>(place.first_line);
    const auto end = lines.begin() + static_cast<long>(place.end_line);
    return writeTyped(std::vector<Line>(first, end));
}

std::string ReasonTeller::markWithYears() const
{
    const CompiledMark& mark = compiled_.marks[maker_.best_mark];
    const std::string years = yearsInWords(mark.from, mark.to);
    return years.empty() ? mark.text : mark.text + " (known " + years + ")";
}

void ReasonTeller::tellLetters()
{
    if (!maker_.has_marks) {
        add(1, "the register has no mark of this maker to compare with");
        return;
    }
    const double factor = maker_.lettersFactor();
    std::size_t best_stamp = 0;
    MarkPlace best;
    for (std::size_t s = 0; s < stamps_.size(); ++s) {
        const MarkPlace place = stamps_[s].bestPlace(maker_.best_mark);
        if (place.odds > best.odds) {
            best = place;
            best_stamp = s;
        }
    }
    if (factor > 0 && best.odds > 0) {
        add(factor,
            "the letters " + lettersOf(best_stamp, best) + " fit the mark " + markWithYears());
        return;
    }
    // Told only where the letters speak for somebody else.
    add(std::min(0.0, factor - (posterior_.log_all_joint - posterior_.log_all_markless)),
        "no line that was read fits a mark of this maker");
}

void ReasonTeller::tellRivals()
{
    const double own = maker_.lettersFactor();
    if (own < worth_telling)
        return;
    std::vector<const MakerPosterior*> rivals;
    for (const MakerPosterior& other : posterior_.makers)
        if (other.maker != maker_.maker && other.has_marks &&
            other.lettersFactor() > own - nearly_as_well)
            rivals.push_back(&other);
    if (rivals.empty())
        return;
    std::sort(rivals.begin(), rivals.end(),
              [](const auto* a, const auto* b) { return a->probability > b->probability; });
    std::string text =
        countInWords(rivals.size()) +
        (rivals.size() == 1 ? " other maker's mark fits" : " other makers' marks fit") +
        " nearly as well: ";
    for (std::size_t i = 0; i < rivals.size() && i < most_rivals_named; ++i)
        text.append(i == 0 ? "" : ", ").append(compiled_.marks[rivals[i]->best_mark].text);
    if (rivals.size() > most_rivals_named)
        text += ", ...";
    add(std::log(1 + static_cast<double>(rivals.size())), text);
}

// The years that the dates of the item leave, as one says them; empty when they are many.
std::string ReasonTeller::yearsRead() const
{
    std::vector<int> years;
    for (std::size_t y = 0; y < posterior_.date_shares.size(); ++y)
        if (posterior_.date_shares[y] > 0.03)
            years.push_back(compiled_.range.first + static_cast<int>(y));
    if (years.empty())
        return {};
    if (years.size() == 1)
        return "the year " + std::to_string(years.front());
    const bool run = static_cast<std::size_t>(years.back() - years.front()) + 1 == years.size();
    if (run && years.size() > 2)
        return "the years " + std::to_string(years.front()) + " to " + std::to_string(years.back());
    std::string text = "the years ";
    for (std::size_t i = 0; i < years.size() && i < 4; ++i)
        text.append(i == 0                  ? ""
                    : i + 1 == years.size() ? " or "
                                            : ", ")
            .append(std::to_string(years[i]));
    return years.size() > 4 ? text + ", ..." : text;
}

// The dates against this maker's years, compared with how they suit all makers together.
void ReasonTeller::tellYears()
{
    const std::string read = yearsRead();
    const std::string own = yearsInWords(registered().from, registered().to);
    if (!posterior_.has_dates || read.empty() || own.empty() || maker_.prior <= 0)
        return;
    const double factor = maker_.log_dated - std::log(maker_.prior) - posterior_.log_all_dated;
    double within = 0;
    const std::vector<double> limits =
        softYears(registered().from, registered().to, compiled_.range);
    for (std::size_t y = 0; y < limits.size(); ++y)
        within += limits[y] >= 1 ? posterior_.date_shares[y] : 0;
    const bool several = read.rfind("the years", 0) == 0;
    const std::string verb = within > 0.6   ? (several ? " lie within" : " lies within")
                             : within > 0.2 ? (several ? " partly suit" : " partly suits")
                                            : (several ? " lie outside" : " lies outside");
    // Always told: it is what a person looks for first.
    reasons_.push_back({std::abs(factor), read + verb + " the maker's years (" + own + ")"});
}

// Where the year is told and the mark was not in use then.
void ReasonTeller::tellMarkYears()
{
    if (!posterior_.has_dates || !maker_.has_marks || maker_.lettersFactor() < worth_telling)
        return;
    const CompiledMark& mark = compiled_.marks[maker_.best_mark];
    const std::string years = yearsInWords(mark.from, mark.to);
    double use = 0;
    const std::vector<double>& used = compiled_.yearsOfMark(maker_.best_mark);
    for (std::size_t y = 0; y < used.size(); ++y)
        use += posterior_.date_shares[y] * used[y];
    if (years.empty() || use > 0.5)
        return;
    const std::string read = yearsRead().empty() ? std::string("the date") : yearsRead();
    const bool several = read.rfind("the years", 0) == 0;
    const char* suits = use < 0.05 ? ", not for "
                        : several  ? ", which suits only some of "
                                   : ", hardly for ";
    add(std::log(std::max(use, 1e-3)),
        "the mark " + mark.text + " is known only " + years + suits + read);
}

void ReasonTeller::tellType()
{
    const ItemType* type = evidence_.type_id.empty() ? nullptr : known_.itemType(evidence_.type_id);
    const std::string own = yearsInWords(registered().from, registered().to);
    if (!type || own.empty())
        return;
    double sum = 0, shares = 0;
    for (const MakerPosterior& maker : posterior_.makers) {
        sum += maker.share * maker.type_fit;
        shares += maker.share;
    }
    const double factor = std::log(maker_.type_fit / (sum / shares));
    add(factor, "the maker's years (" + own + ")" + (factor > 0 ? " suit" : " hardly suit") +
                    " the item type " + type->nameWithPattern() + " (" +
                    yearsInWords(type->introduced, type->withdrawn) + ")");
}

void ReasonTeller::tellArchive(const CandidateOptions& options)
{
    const auto count = options.archive_counts.find(registered().maker_id);
    if (options.archive_counts.empty())
        return;
    const double factor = std::log(maker_.share * static_cast<double>(known_.makers.size()));
    const auto items =
        count == options.archive_counts.end() ? 0L : std::lround(std::max(0.0, count->second));
    add(factor, "the archive holds " + countInWords(static_cast<std::size_t>(items)) +
                    (items == 1 ? " item" : " items") + " of this maker");
}

std::vector<std::string> ReasonTeller::tell(const CandidateOptions& options)
{
    if (!nothingRead()) {
        tellLetters();
        tellRivals();
        tellYears();
        tellMarkYears();
    }
    tellType();
    tellArchive(options);
    std::stable_sort(reasons_.begin(), reasons_.end(),
                     [](const Reason& a, const Reason& b) { return a.weight > b.weight; });
    std::vector<std::string> texts;
    for (Reason& reason : reasons_)
        texts.push_back(std::move(reason.text));
    if (texts.empty())
        texts.push_back(nothingRead() ? "nothing was read: this is how likely the maker is unseen"
                                      : "what was read speaks neither for nor against this maker");
    return texts;
}

}  // namespace

std::vector<std::string> reasonsFor(const MakerPosterior& maker, const Posterior& posterior,
                                    const ItemEvidence& evidence,
                                    const std::vector<StampEvidence>& stamps,
                                    const MakerRegister& known, const CompiledRegister& compiled,
                                    const CandidateOptions& options)
{
    return ReasonTeller(maker, posterior, evidence, stamps, known, compiled).tell(options);
}

}  // namespace models
