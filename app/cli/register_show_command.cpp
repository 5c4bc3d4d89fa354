#include <algorithm>
#include <memory>
#include <set>

#include <CLI/CLI.hpp>

#include "app/cli/exit_codes.h"
#include "app/cli/places.h"
#include "app/cli/register_commands.h"
#include "models/maker_register.h"
#include "models/year_weights.h"

namespace cli {

namespace {

struct ShownOptions {
    std::string id, register_folder;
};

// Prints what a register says, and remembers which sources it says it by.
class RegisterPrinter {
public:
    RegisterPrinter(std::ostream& out, const models::MakerRegister& known)
        : out_(out), known_(known)
    {
    }

    void printMaker(const models::Maker& maker);
    void printType(const models::ItemType& type);

private:
    void printSuccession(const models::Maker& maker);
    void printMarks(const models::Maker& maker);
    void printCodes(const models::Maker& maker);
    void printFeature(const models::Feature& feature, const std::string& tied_to);
    void printNotes(const std::string& notes, const std::string& source_id);
    void printSources();
    void heading(const char* words);
    std::string named(const std::string& maker_id) const;

    std::ostream& out_;
    const models::MakerRegister& known_;
    std::set<std::string> cited_;
    std::string heading_;  // printed already
};

std::string behindComma(const std::string& text)
{
    return text.empty() ? "" : ", " + text;
}

std::string yearsKnown(const std::string& from, const std::string& to)
{
    const std::string words = models::yearsInWords(from, to);
    return words.empty() ? "years unknown" : words;
}

std::string listInWords(const std::vector<std::string>& parts)
{
    std::string words;
    for (const std::string& part : parts)
        words += (words.empty() ? "" : ", ") + part;
    return words;
}

void RegisterPrinter::heading(const char* words)
{
    if (heading_ != words)
        out_ << words << "\n";
    heading_ = words;
}

std::string RegisterPrinter::named(const std::string& maker_id) const
{
    const models::Maker* maker = known_.maker(maker_id);
    return (maker ? maker->name + " " : "") + "[" + maker_id + "]";
}

void RegisterPrinter::printNotes(const std::string& notes, const std::string& source_id)
{
    if (!notes.empty())
        out_ << "; " << notes;
    if (!source_id.empty())
        out_ << " (" << source_id << ")";
    out_ << "\n";
    if (!source_id.empty())
        cited_.insert(source_id);
}

void RegisterPrinter::printSuccession(const models::Maker& maker)
{
    std::set<std::string> told = {maker.maker_id};
    const models::Maker* before = known_.maker(maker.successor_of);
    for (; before && told.insert(before->maker_id).second;
         before = known_.maker(before->successor_of))
        out_ << "  took over from " << named(before->maker_id) << ", "
             << yearsKnown(before->from, before->to) << "\n";
    for (const models::Maker& later : known_.makers)
        if (later.successor_of == maker.maker_id)
            out_ << "  succeeded by " << named(later.maker_id) << ", "
                 << yearsKnown(later.from, later.to) << "\n";
}

void RegisterPrinter::printMarks(const models::Maker& maker)
{
    static const char* const kinds[] = {"text", "code", "device"};
    static const char* const frames[] = {"no frame", "in a box", "in an oval", "in a circle",
                                         "in a diamond"};
    for (const models::Mark& mark : known_.marks) {
        if (mark.maker_id != maker.maker_id)
            continue;
        heading("marks");
        out_ << "  " << mark.text << "  " << kinds[static_cast<std::size_t>(mark.kind)] << ", "
             << frames[static_cast<std::size_t>(mark.frame)] << ", "
             << yearsKnown(mark.from, mark.to);
        printNotes(mark.notes, mark.source_id);
    }
}

void RegisterPrinter::printCodes(const models::Maker& maker)
{
    for (const models::Code& code : known_.codes) {
        if (code.stands_for != models::CodeMeaning::Maker || code.value != maker.maker_id)
            continue;
        heading("codes");
        out_ << "  " << code.code << "  " << yearsKnown(code.from, code.to);
        out_ << (code.issuer.empty() ? "" : ", given by " + code.issuer);
        printNotes(code.notes, code.source_id);
    }
}

void RegisterPrinter::printFeature(const models::Feature& feature, const std::string& tied_to)
{
    heading("features");
    out_ << "  " << feature.name << " [" << feature.feature_id << "]  "
         << yearsKnown(feature.from, feature.to) << behindComma(tied_to);
    printNotes(feature.notes, feature.source_id);
}

void RegisterPrinter::printSources()
{
    for (const std::string& source_id : cited_) {
        const auto source =
            std::find_if(known_.sources.begin(), known_.sources.end(),
                         [&](const models::Source& one) { return one.source_id == source_id; });
        heading("sources");
        out_ << "  " << source_id << "  "
             << (source == known_.sources.end() ? "not listed in sources.csv" : source->citation)
             << "\n";
    }
}

void RegisterPrinter::printMaker(const models::Maker& maker)
{
    out_ << named(maker.maker_id) << "\n  " << yearsKnown(maker.from, maker.to)
         << behindComma(maker.place);
    printNotes(maker.notes, maker.source_id);
    printSuccession(maker);
    printMarks(maker);
    printCodes(maker);
    for (const models::Feature& feature : known_.features)
        if (feature.maker_id == maker.maker_id)
            printFeature(feature, "on " + feature.type_id);
    printSources();
}

void RegisterPrinter::printType(const models::ItemType& type)
{
    out_ << type.name << " [" << type.type_id << "]\n  "
         << yearsKnown(type.introduced, type.withdrawn) << behindComma(type.pattern);
    printNotes(type.notes, type.source_id);
    if (!type.parts.empty())
        out_ << "  parts: " << listInWords(type.parts) << "\n";
    if (!type.sizes.empty())
        out_ << "  sizes: " << listInWords(type.sizes) << "\n";
    for (const models::Feature& feature : known_.features)
        if (feature.type_id == type.type_id)
            printFeature(feature, feature.maker_id.empty() ? "" : "by " + named(feature.maker_id));
    printSources();
}

int showId(const ShownOptions& options, Surroundings& around)
{
    const models::MakerRegister known =
        models::loadRegister(registerFolder(options.register_folder, around));
    const models::Maker* maker = known.maker(options.id);
    const models::ItemType* type = known.itemType(options.id);
    if (maker)
        RegisterPrinter(around.out, known).printMaker(*maker);
    if (type)
        RegisterPrinter(around.out, known).printType(*type);
    if (maker || type)
        return done;
    around.err << "weftmark: the register knows no maker or item type '" << options.id
               << "'; look its id up with weftmark register list makers, or list types\n";
    return nothing_found;
}

}  // namespace

std::function<int()> prepareRegisterShow(CLI::App& command, Surroundings& around)
{
    const auto options = std::make_shared<ShownOptions>();
    command.add_option("ID", options->id, "The id of a maker or of an item type")->required();
    command.add_option("--register", options->register_folder, register_help)->type_name("FOLDER");
    return [options, &around] { return showId(*options, around); };
}

}  // namespace cli
