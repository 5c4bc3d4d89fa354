// Reads the sets of pictures and prints a table for each: how well Weftmark reads, beside plain
// Tesseract. What is counted how stands in scoring.h and reading_metrics.h.
//   weftmark_bench [--readers A,B+C] [--no-plain] [--all-modes] [--only SET] [--first N] [--shared
//   FOLDER]
//                  [--sheet FOLDER] [--write-results]

#include <algorithm>
#include <chrono>
#include <fstream>
#include <functional>
#include <iostream>
#include <limits>
#include <sstream>
#include <stdexcept>

#include <opencv2/core.hpp>

#include "tests/bench/bench_sets.h"
#include "tests/bench/bench_table.h"
#include "tests/bench/contact_sheet.h"
#include "tests/bench/contestant.h"
#include "tests/bench/run_set.h"
#include "tests/support/drawn_marks.h"
#include "tests/support/temporary_folder.h"

namespace {

namespace fs = std::filesystem;

constexpr const char* usage =
    "weftmark_bench [options]\n"
    "  --readers A,B+C   readers Weftmark is run with, a row each; '+' joins them (line-reader)\n"
    "  --no-plain        leave plain Tesseract out\n"
    "  --all-modes       try plain Tesseract's slow modes too\n"
    "  --only SET        only sets whose name begins so: drawn, drawn-lines, drawn-more,\n"
    "                    samples, bare, dates, date-crops\n"
    "  --first N         only the first N pictures of each set\n"
    "  --shared FOLDER   holds real_marks/dates and textures (../shared)\n"
    "  --sheet FOLDER    write pictures of the lines that fail\n"
    "  --write-results   append the tables to tests/bench/RESULTS.md\n";

struct Settings {
    std::string readers = "line-reader", only;
    bool plain = true, all_modes = false, write_results = false;
    std::size_t first = std::numeric_limits<std::size_t>::max();
    fs::path repository = WEFTMARK_SOURCE_DIR, shared = repository / "../shared", sheet;
    std::string command;  // with the options that bear on the figures
};

// Takes the option at `i` with its value; returns the value's place.
std::size_t takeValue(Settings& settings, const std::vector<std::string>& arguments, std::size_t i)
{
    const std::string& name = arguments[i];
    if (i + 1 == arguments.size())
        throw std::invalid_argument("not understood: " + name);
    const std::string& value = arguments[i + 1];
    if (name == "--readers" || name == "--only" || name == "--first")
        settings.command += " " + name + " " + value;
    if (name == "--readers")
        settings.readers = value;
    else if (name == "--only")
        settings.only = value;
    else if (name == "--first")
        settings.first = std::stoul(value);
    else if (name == "--shared")
        settings.shared = value;
    else if (name == "--sheet")
        settings.sheet = value;
    else
        throw std::invalid_argument("not understood: " + name);
    return i + 1;
}

Settings settingsFrom(const std::vector<std::string>& arguments)
{
    Settings settings;
    settings.command = "weftmark_bench";
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string& name = arguments[i];
        if (name == "--no-plain")
            settings.plain = false;
        else if (name == "--all-modes")
            settings.all_modes = true;
        else if (name == "--write-results")
            settings.write_results = true;
        else
            i = takeValue(settings, arguments, i);
    }
    return settings;
}

std::vector<bench::Entry> entriesOf(const Settings& settings)
{
    const fs::path known = settings.repository / "models/register";
    std::vector<bench::Entry> entries;
    std::istringstream names(settings.readers);
    for (std::string name; std::getline(names, name, ',');)
        entries.push_back(bench::weftmark(name, known));
    if (settings.plain)
        for (bench::Entry& entry : bench::plainTesseract(known, settings.all_modes))
            entries.push_back(std::move(entry));
    return entries;
}

// All but the drawn ones, which are made only when it is their turn.
std::vector<bench::BenchSet> storedSets(const Settings& settings)
{
    const fs::path samples = settings.repository / "sample_images";
    std::vector<bench::BenchSet> sets =
        bench::sampleSets(samples, models::loadRegister(settings.repository / "models/register"));
    std::vector<fs::path> bare{samples};
    if (fs::exists(settings.shared / "textures"))
        bare.push_back(settings.shared / "textures");
    sets.push_back(bench::bareSet(bare));
    const fs::path dates = settings.shared / "real_marks/dates";
    if (fs::exists(dates)) {
        sets.push_back(bench::datePhotos(dates));
        sets.push_back(bench::dateCrops(dates));
    } else {
        std::cerr << "no photographed dates: " << dates.string() << " is not there\n";
    }
    std::erase_if(sets, [&](const bench::BenchSet& set) {
        return !set.name.starts_with(settings.only) || set.pictures.empty();
    });
    for (bench::BenchSet& set : sets)
        if (set.pictures.size() > settings.first)
            set.pictures.resize(settings.first);
    return sets;
}

double median(std::vector<double> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    return *middle;
}

bool reads(const bench::Entry& entry, const bench::BenchSet& set)
{
    return set.single_lines ? !entry.pictures_only : !entry.single_lines_only;
}

bool isBetter(const bench::Score& a, const bench::Score& b)
{
    return std::pair(a.exact, b.characters.edits + b.false_lines) >
           std::pair(b.exact, a.characters.edits + a.false_lines);
}

std::string fileName(std::string name)
{
    std::erase_if(name, [](char c) { return c == '(' || c == ')'; });
    std::replace_if(
        name.begin(), name.end(), [](char c) { return c == '/' || c == ' '; }, '-');
    return name;
}

long secondsSince(std::chrono::steady_clock::time_point start)
{
    return std::chrono::duration_cast<std::chrono::seconds>(std::chrono::steady_clock::now() -
                                                            start)
        .count();
}

std::string report(const bench::BenchSet& set, const std::vector<bench::Entry>& entries,
                   const Settings& settings)
{
    std::vector<bench::Row> rows;
    std::optional<bench::Row> plain;
    for (const bench::Entry& entry : entries) {
        if (!reads(entry, set))
            continue;
        const auto start = std::chrono::steady_clock::now();
        const bench::SetRun run = bench::runSet(set, entry);
        std::cerr << set.name << ": " << entry.name << ", " << secondsSince(start) << " s\n";
        bench::Row row{entry.name, bench::scoreOf(set.pictures, run.reads), median(run.seconds),
                       run.peak_mib};
        if (entry.is_weftmark) {
            if (!settings.sheet.empty())
                bench::writeContactSheets(settings.sheet, fileName(set.name + " " + entry.name),
                                          set.pictures, run.reads);
            rows.push_back(std::move(row));
        } else if (!plain || isBetter(row.score, plain->score)) {
            plain = std::move(row);
        }
    }
    if (plain)
        rows.push_back(*plain);
    std::size_t lines = 0;
    for (const bench::Picture& picture : set.pictures)
        lines += picture.lines.size();
    std::ostringstream out;
    out << "### " << set.title << ": " << set.pictures.size() << " pictures, " << lines
        << " lines\n\n"
        << bench::tableOf(rows) << '\n';
    return out.str();
}

void addDrawn(const Settings& settings, const std::function<void(const bench::BenchSet&)>& add)
{
    const auto wanted = [&](const std::string& name) { return name.starts_with(settings.only); };
    const auto may_be_wanted = [&](const std::string& begin) {
        return wanted(begin) || settings.only.starts_with(begin);
    };
    for (const double contrast : drawnMarkContrasts()) {
        if (!may_be_wanted("drawn-0") && !may_be_wanted("drawn-lines-0"))
            continue;
        const support::TemporaryFolder folder;
        for (const bench::BenchSet& set : bench::drawnSets(contrast, folder.path(), settings.first))
            if (wanted(set.name))
                add(set);
    }
    if (may_be_wanted("drawn-more")) {
        const support::TemporaryFolder folder;
        add(bench::moreLines(drawnMarkContrasts().front(), folder.path(), settings.first));
    }
}

int runBench(const Settings& settings)
{
    cv::setNumThreads(1);  // two pictures are read at a time
    const auto start = std::chrono::steady_clock::now();
    const std::string circumstances = bench::circumstances(settings.repository);
    const std::vector<bench::Entry> entries = entriesOf(settings);
    std::string text;
    const auto add = [&](const bench::BenchSet& set) {
        const std::string section = report(set, entries, settings);
        std::cout << section << std::flush;
        text += section;
    };
    addDrawn(settings, add);
    for (const bench::BenchSet& set : storedSets(settings))
        add(set);
    if (text.empty())
        throw std::invalid_argument("there is no set whose name begins with " + settings.only);
    const auto seconds =
        std::chrono::duration_cast<std::chrono::seconds>(std::chrono::steady_clock::now() - start);
    std::ostringstream head;
    head << "\n## " << circumstances << "\n\n`" << settings.command << "`, " << secondsSince(start)
         << " seconds in all.\n\n";
    std::cout << head.str();
    if (settings.write_results) {
        std::ofstream out(settings.repository / "tests/bench/RESULTS.md", std::ios::app);
        out << head.str() << text;
        if (!out.flush())
            throw std::runtime_error("cannot write tests/bench/RESULTS.md");
    }
    return 0;
}

}  // namespace

int main(int argc, char** argv)
{
    const std::vector<std::string> arguments(argv + 1, argv + argc);
    if (std::find(arguments.begin(), arguments.end(), "--help") != arguments.end()) {
        std::cout << usage;
        return 0;
    }
    try {
        return runBench(settingsFrom(arguments));
    } catch (const std::invalid_argument& error) {
        std::cerr << error.what() << '\n' << usage;
        return 2;
    } catch (const std::exception& error) {
        std::cerr << error.what() << '\n';
        return 3;
    }
}
