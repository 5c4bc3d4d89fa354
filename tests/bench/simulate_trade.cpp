#include "tests/bench/simulate_trade.h"

#include <algorithm>
#include <set>

#include "models/typed_notation.h"
#include "tests/support/dice.h"

namespace {

constexpr int first_year = 1860, last_year = 1959;

// How often a name begins with each letter: a few carry most, as among real surnames.
const std::string& crowdedInitials()
{
    static const std::string letters =
        "BBBBBBBBBBSSSSSSSSSSHHHHHHHHHWWWWWWWWWCCCCCCCCMMMMMMMPPPPPPGGGGGTTTTTRRRRRLLLLFFFDDDJJJJAA"
        "AKK"
        "NNEEEIOVYQUZ";
    return letters;
}

class TradeMaker {
public:
    explicit TradeMaker(std::uint32_t seed) : dice_(seed) {}

    void addMaker(models::MakerRegister& trade, const std::string& id);

private:
    struct Firm {
        std::string forenames;  // initials, "T" or "TJ"
        std::string surname, partner, ending;
    };

    std::string letter();
    std::string surname();
    Firm firm();
    std::string initialsMark(const Firm& firm);
    std::string nameMark(const Firm& firm);
    void addMark(models::MakerRegister& trade, const models::Maker& maker, const std::string& text);

    Dice dice_;
    std::vector<std::string> surnames_;
};

std::string TradeMaker::letter()
{
    const std::string& letters = crowdedInitials();
    return std::string(
        1, letters[static_cast<std::size_t>(dice_.whole(0, static_cast<int>(letters.size()) - 1))]);
}

// One in four is a surname that another firm has already.
std::string TradeMaker::surname()
{
    static const std::vector<std::string> vowels = {"A", "E", "I", "O", "U", "OA", "EE"};
    static const std::vector<std::string> codas = {"RS",  "ST", "LV", "ND", "LK", "NQ", "RR", "V",
                                                   "STR", "RM", "XT", "LD", "NB", "TH", "SK", "MB"};
    static const std::vector<std::string> middles = {"", "", "", "", "ER", "EN", "OW", "IL", "UM"};
    static const std::vector<std::string> endings = {
        "KELL",  "LOWE",  "ABBY",  "MARRE", "WICKE", "SOE",  "VANE",  "QUIST", "INDLE", "THAM",
        "GARTH", "PROSK", "DREW",  "STROD", "NEY",   "OCKE", "ETTLE", "UMBER", "ISKE",  "YATH",
        "OUND",  "IGGE",  "ARROW", "ESSLE", "OPP",   "ULVE", "ATTER", "IMSH",  "ORBEN", "AXLEY"};
    if (!surnames_.empty() && dice_.once_in(4))
        return dice_.among(surnames_);
    std::string name = letter();
    name.append(dice_.among(vowels)).append(dice_.among(codas)).append(dice_.among(middles));
    surnames_.push_back(name + dice_.among(endings));
    return surnames_.back();
}

TradeMaker::Firm TradeMaker::firm()
{
    static const std::vector<std::string> endings = {" & CO",   " & CO",      " & CO LTD", " LTD",
                                                     " LTD",    " & SONS",    " BROS",     "",
                                                     " CO LTD", " & SONS LTD"};
    Firm made;
    made.forenames = letter() + (dice_.once_in(3) ? letter() : "");
    made.surname = surname();
    if (dice_.once_in(5))
        made.partner = surname();
    made.ending = dice_.among(endings);
    return made;
}

std::string TradeMaker::initialsMark(const Firm& firm)
{
    std::string letters = firm.forenames + firm.surname.substr(0, 1);
    const bool dotted = !dice_.once_in(4);
    std::string text;
    for (const char c : letters)
        text.append(1, c).append(dotted ? "." : "");
    if (!firm.partner.empty())
        text.append(" & ").append(firm.partner, 0, 1).append(dotted ? "." : "");
    return text + firm.ending;
}

std::string TradeMaker::nameMark(const Firm& firm)
{
    std::string text;
    if (!dice_.once_in(3))
        for (const char c : firm.forenames)
            text.append(1, c).append(".");
    text.append(text.empty() ? "" : " ").append(firm.surname);
    if (!firm.partner.empty())
        text.append(" & ").append(firm.partner);
    return text + firm.ending;
}

void TradeMaker::addMark(models::MakerRegister& trade, const models::Maker& maker,
                         const std::string& text)
{
    const bool again = std::any_of(
        trade.marks.rbegin(), trade.marks.rend(), [&, seen = 0](const models::Mark& other) mutable {
            return ++seen <= 3 && other.maker_id == maker.maker_id && other.text == text;
        });
    if (again)
        return;
    models::Mark mark;
    mark.maker_id = maker.maker_id;
    mark.line = models::parseTyped(text).lines.front();
    mark.text = text;
    trade.marks.push_back(std::move(mark));
}

void TradeMaker::addMaker(models::MakerRegister& trade, const std::string& id)
{
    const Firm made = firm();
    models::Maker maker;
    maker.maker_id = id;
    maker.name = made.surname + made.ending;
    const int length = dice_.whole(6, 60);
    const int from = dice_.whole(first_year, last_year - length);
    maker.from = std::to_string(from);
    maker.to = std::to_string(from + length);
    trade.makers.push_back(maker);
    addMark(trade, maker, nameMark(made));
    if (dice_.whole(1, 10) <= 6)
        addMark(trade, maker, nameMark(made));
    if (dice_.whole(1, 10) <= 5)
        addMark(trade, maker, initialsMark(made));
}

// What stands beside the marks of any trade.
void addOtherThings(models::MakerRegister& trade)
{
    trade.spellings = {{"LTD", "LIMITED"}, {"CO", "COMPANY"}, {"&", "AND"}, {"BROS", "BROTHERS"}};
    for (int i = 1; i <= 40; ++i) {
        models::Code code;
        code.code = "S.H. " + std::to_string(i);
        code.stands_for = models::CodeMeaning::Inspector;
        trade.codes.push_back(code);
    }
    models::ItemType type;
    type.type_id = "pouch";
    type.name = "Lamp pouch";
    type.pattern = "Pattern 1908";
    type.sizes = {"1", "2", "3", "36", "38", "40"};
    trade.item_types.push_back(type);
}

}  // namespace

SimulatedTrade simulateTrade(std::size_t makers, std::size_t strangers, std::uint32_t seed)
{
    SimulatedTrade trade;
    TradeMaker maker(seed);
    for (std::size_t i = 0; i < makers + strangers; ++i)
        maker.addMaker(i % (makers + strangers) < makers ? trade.known : trade.strangers,
                       std::string("m").append(std::to_string(i)));
    addOtherThings(trade.known);
    trade.strangers.spellings = trade.known.spellings;
    return trade;
}
