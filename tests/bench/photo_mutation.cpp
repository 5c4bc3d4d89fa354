// Loads files with seeded damage and counts what becomes of them. To be built with
// -DSANITIZE=address,undefined, so that reading beyond a buffer ends the program:
//   photo_mutation [FILES] [SEED] [FOLDER]
// 20000 files unless told otherwise; those that took more than a second are kept in FOLDER.
// Exit code 1 when a file took more than five seconds; a file that takes a minute ends the program.
#include <unistd.h>

#include <chrono>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <map>

#include "tests/support/picture_files_harmed.h"
#include "tests/support/temporary_folder.h"
#include "vision/image_error.h"
#include "vision/photo.h"

namespace {

constexpr double most_seconds = 5, slow_seconds = 1;
constexpr unsigned hangs = 60;  // seconds after which nobody waits any longer

struct Tally {
    int loaded = 0, warned = 0, refused = 0;
    double slowest_s = 0;
    int slowest_number = 0;
};

void tellHang(int)
{
    constexpr char text[] = "a file took a minute; the last number printed says which hundred\n";
    (void)!write(STDERR_FILENO, text, sizeof(text) - 1);
    _exit(1);
}

double load(const std::filesystem::path& file, int number, Tally& tally)
{
    const auto begin = std::chrono::steady_clock::now();
    alarm(hangs);
    try {
        const vision::Photo photo = vision::loadPhoto(file, {.max_megapixels = 2});
        ++tally.loaded;
        if (!photo.warnings.empty())
            ++tally.warned;
    } catch (const vision::ImageError&) {
        ++tally.refused;
    }
    alarm(0);
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - begin;
    if (taken.count() > tally.slowest_s) {
        tally.slowest_s = taken.count();
        tally.slowest_number = number;
    }
    return taken.count();
}

int print(const std::map<std::string, Tally>& tallies)
{
    bool fast = true;
    std::printf("format   files  loaded  of these warned  refused  slowest\n");
    for (const auto& [name, tally] : tallies) {
        std::printf("%-6s %7d %7d %16d %8d  %.3f s (file %d)\n", name.c_str(),
                    tally.loaded + tally.refused, tally.loaded, tally.warned, tally.refused,
                    tally.slowest_s, tally.slowest_number);
        fast = fast && tally.slowest_s <= most_seconds;
    }
    return fast ? 0 : 1;
}

}  // namespace

int main(int count, char** arguments)
{
    const int files = count > 1 ? std::atoi(arguments[1]) : 20000;
    std::mt19937 random(count > 2 ? static_cast<unsigned>(std::atoi(arguments[2])) : 20250301U);
    if (files <= 0) {
        std::cerr << "photo_mutation [FILES] [SEED] [FOLDER]\n";
        return 2;
    }
    std::signal(SIGALRM, tellHang);
    const auto sound = picture_files::soundFiles();
    const support::TemporaryFolder folder;
    const auto file = folder.path() / "harmed";
    std::map<std::string, Tally> tallies;
    for (int number = 0; number < files; ++number) {
        if (number % 100 == 0)
            std::cerr << '\r' << number << std::flush;
        const auto& [name, whole] = sound[static_cast<std::size_t>(number) % sound.size()];
        picture_files::write(file, picture_files::harmed(whole, random));
        const double taken_s = load(file, number, tallies[name]);
        if (taken_s > slow_seconds && count > 3)
            std::filesystem::copy_file(file,
                                       std::filesystem::path(arguments[3]) / std::to_string(number),
                                       std::filesystem::copy_options::overwrite_existing);
    }
    std::cerr << '\r';
    return print(tallies);
}
