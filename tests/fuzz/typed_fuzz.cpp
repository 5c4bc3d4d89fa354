// Any text as the typed notation: it is refused with a place in it and what was expected, or it
// comes back as it was written, and prints in Leiden.
#include "models/leiden.h"
#include "models/letters.h"
#include "models/typed_notation.h"
#include "tests/fuzz/fuzz_driver.h"

namespace {

void promise(bool holds, const char* what)
{
    if (!holds)
        fuzz::failed(what);
}

}  // namespace

FuzzSeeds fuzzSeeds()
{
    return {{"T.V.No.",
             "A?",
             "(0|6|8)",
             "+",
             "[+ + +]",
             "[.]",
             "[...]",
             "[3..5]",
             "[3..]",
             "[~5]",
             "[+3]",
             "[+3..5]",
             "[+3..]",
             "[+~5]",
             "+{guess 0|6}",
             "[...]{guess 0|6}{erased}A",
             "A{erased}B{over}C{earlier}",
             "[- - -]",
             "19[- - -]",
             "[AB]",
             "[AB?]{earlier}",
             "[(A|B)C]",
             "|1940|",
             "{cut}A{cut}",
             "{open}[- - -]A",
             "{arrow} K",
             "T.H. & CO / 3/40",
             "AB\nCD\r\nEF",
             "\\(\\\\\\|",
             "\xC3\x89?",
             "E\xCC\x81"},
            {"?",           "(",      ")",         "|",     "[",      "]",        ".",
             "..",          "- - -",  "+",         "~",     "{",      "}",        "{guess ",
             "{erased}",    "{over}", "{earlier}", "{cut}", "{open}", "{arrow}",  " / ",
             "\n",          "\\",     "999",       "1000",  "0",      "\xCC\xA3", "\xE2\x80\xA6",
             "\xE2\x86\x91"}};
}

bool fuzzOne(std::string_view text)
{
    const std::string typed(text);
    const models::ParsedNotation parsed = models::parseTyped(typed);
    if (parsed.fault) {
        promise(parsed.fault->position <= models::charactersOf(typed).size(),
                "a fault lies in the text or at its end");
        promise(!parsed.fault->expected.empty(), "a fault says what was expected");
    }
    const std::string written = models::writeTyped(parsed.lines);
    const models::ParsedNotation again = models::parseTyped(written);
    promise(!again.fault, "what was understood is written without fault");
    promise(again.lines == parsed.lines, "what was understood comes back");
    promise(models::writeTyped(again.lines) == written, "it is written alike each time");
    for (const models::Line& line : parsed.lines)
        promise(line.cells.empty() || !models::toLeiden(line).empty(),
                "no line vanishes in Leiden");
    return !parsed.fault;
}
