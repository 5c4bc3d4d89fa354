#include "tests/bench/bench_table.h"

#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <fstream>
#include <iomanip>
#include <memory>
#include <sstream>
#include <thread>

namespace bench {

namespace {

std::string number(const std::optional<double>& value, int places, const char* unit = "")
{
    if (!value)
        return "-";
    std::ostringstream out;
    out << std::fixed << std::setprecision(places) << *value << unit;
    return out.str();
}

std::string percent(const std::optional<double>& share, int places = 1)
{
    return share ? number(100 * *share, places, " %") : "-";
}

struct Column {
    const char* title;
    std::string (*value)(const Row&);
};

std::string exactLines(const Row& row)
{
    const Score& s = row.score;
    if (s.lines == 0)
        return "-";
    return std::to_string(s.exact) + " (" +
           percent(static_cast<double>(s.exact) / static_cast<double>(s.lines)) + ")";
}

std::string falseLines(const Row& row)
{
    const Score& s = row.score;
    if (!s.all_labelled || s.pictures == 0)
        return "-";
    return number(static_cast<double>(s.false_lines) / static_cast<double>(s.pictures), 2);
}

std::string misledPictures(const Row& row)
{
    const Score& s = row.score;
    if (!s.all_labelled || s.pictures == 0)
        return "-";
    return percent(static_cast<double>(s.misled) / static_cast<double>(s.pictures));
}

const std::array<Column, 15>& columns()
{
    static const std::array<Column, 15> all{{
        {"reader", [](const Row& r) { return r.reader; }},
        {"lines exact", exactLines},
        {"CER", [](const Row& r) { return percent(r.score.characters.rate()); }},
        {"false lines a picture", falseLines},
        {"pictures with one of 0.5", misledPictures},
        {"coverage at 95 %",
         [](const Row& r) {
             return percent(
                 metrics::coverageAtPrecision(r.score.judged_lines, r.score.lines, 0.95));
         }},
        {"wrong but sure, of 100 cells",
         [](const Row& r) { return number(metrics::wrongButSurePer100(r.score.judged_cells), 2); }},
        {"right cells that are sure",
         [](const Row& r) { return percent(metrics::rightThatAreSure(r.score.judged_cells)); }},
        {"calibration error, cells",
         [](const Row& r) { return number(metrics::calibrationError(r.score.judged_cells), 3); }},
        {"calibration error, lines",
         [](const Row& r) { return number(metrics::calibrationError(r.score.judged_lines), 3); }},
        {"Brier, cells",
         [](const Row& r) { return number(metrics::brierScore(r.score.judged_cells), 3); }},
        {"maker first",
         [](const Row& r) { return percent(metrics::topShare(r.score.maker_ranks, 1), 0); }},
        {"in three",
         [](const Row& r) { return percent(metrics::topShare(r.score.maker_ranks, 3), 0); }},
        {"seconds", [](const Row& r) { return number(r.median_seconds, 2); }},
        {"peak MiB", [](const Row& r) { return number(r.peak_mib, 0); }},
    }};
    return all;
}

// What a command prints, its last line break left out; empty if it fails.
std::string outputOf(const std::string& command)
{
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(command.c_str(), "r"), pclose);
    std::string text;
    std::array<char, 256> buffer{};
    while (pipe && fgets(buffer.data(), static_cast<int>(buffer.size()), pipe.get()) != nullptr)
        text += buffer.data();
    while (!text.empty() && text.back() == '\n')
        text.pop_back();
    return text;
}

// The rest of the first line of a file that begins with `key`, from the colon on.
std::string fieldOf(const char* file, const std::string& key)
{
    std::ifstream in(file);
    for (std::string line; std::getline(in, line);)
        if (line.starts_with(key)) {
            const std::size_t from = line.find_first_not_of(" \t", line.find(':') + 1);
            return from == std::string::npos ? "" : line.substr(from);
        }
    return {};
}

std::string today()
{
    const std::time_t now = std::time(nullptr);
    std::tm utc{};
    gmtime_r(&now, &utc);
    std::ostringstream out;
    out << std::put_time(&utc, "%Y-%m-%d");
    return out.str();
}

}  // namespace

std::string tableOf(const std::vector<Row>& rows)
{
    std::ostringstream out;
    for (const Column& column : columns())
        out << "| " << column.title << ' ';
    out << "|\n";
    for (std::size_t i = 0; i < columns().size(); ++i)
        out << (i == 0 ? "|---" : "|---:");
    out << "|\n";
    for (const Row& row : rows) {
        for (const Column& column : columns())
            out << "| " << column.value(row) << ' ';
        out << "|\n";
    }
    return out.str();
}

std::string circumstances(const std::filesystem::path& repository)
{
    const std::string git = "git -C '" + repository.string() + "' ";
    const std::string commit = outputOf(git + "rev-parse --short HEAD 2>/dev/null");
    const bool changed =
        !outputOf(git + "status --porcelain --untracked-files=no 2>/dev/null").empty();
    std::ostringstream out;
    out << today() << ", commit " << (commit.empty() ? "unknown" : commit)
        << (changed ? " with changes" : "") << "; " << fieldOf("/proc/cpuinfo", "model name")
        << ", " << std::thread::hardware_concurrency() << " cores, "
        << std::strtol(fieldOf("/proc/meminfo", "MemTotal").c_str(), nullptr, 10) / 1024 << " MiB";
    return out.str();
}

}  // namespace bench
