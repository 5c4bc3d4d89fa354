#include <catch2/catch.hpp>
#include <chrono>
#include <cstdio>

#include <unistd.h>

#include "models/exchange/tei.h"
#include "tests/support/temporary_folder.h"

namespace {

std::string repeated(const std::string& text, int times)
{
    std::string all;
    for (int i = 0; i < times; ++i)
        all += text;
    return all;
}

std::string documentOf(const std::string& before, const std::string& edition)
{
    return "<?xml version=\"1.0\"?>" + before +
           "<TEI xmlns=\"http://www.tei-c.org/ns/1.0\"><text><body><div type=\"edition\"><ab>" +
           edition + "</ab></div></body></text></TEI>";
}

}  // namespace

TEST_CASE("No entity is followed and no file opened for TEI", "[exchange][tei]")
{
    const support::TemporaryFolder folder;
    const auto secret = folder.write("secret.txt", "SECRET");
    const std::string outside =
        "<!DOCTYPE TEI [<!ENTITY x SYSTEM \"file://" + secret.string() + "\">]>";
    std::string bomb = "<!DOCTYPE TEI [<!ENTITY a \"AAAAAAAAAA\">";
    for (char c = 'b'; c < 'm'; ++c)
        bomb += std::string("<!ENTITY ") + c + " \"" +
                repeated(std::string("&") + static_cast<char>(c - 1) + ";", 10) + "\">";
    CHECK_THROWS_AS(models::parseTeiDocument(documentOf(outside, "&x;")), models::TeiError);
    CHECK_THROWS_AS(models::parseTeiDocument(documentOf(bomb + "]>", "&l;")), models::TeiError);
    CHECK_THROWS_AS(models::parseTeiDocument(
                        documentOf("<!DOCTYPE TEI SYSTEM \"http://a.invalid/x.dtd\">", "A")),
                    models::TeiError);
    CHECK_THROWS_AS(models::parseTei("A&x;B"), models::TeiError);
    CHECK_NOTHROW(models::parseTeiDocument(documentOf("", "A&amp;B&#x41;")));
}

TEST_CASE("Size and depth of TEI are bounded", "[exchange][tei]")
{
    const auto start = std::chrono::steady_clock::now();
    for (const int depth : {100, 1000, 200000}) {
        const std::string deep =
            repeated("<hi rend=\"ligature\">", depth) + "A" + repeated("</hi>", depth);
        CHECK_THROWS_AS(models::parseTei(deep), models::TeiError);
    }
    CHECK_NOTHROW(models::parseTei(repeated("<hi>", 50) + "A" + repeated("</hi>", 50)));
    CHECK_THROWS_WITH(models::parseTei(std::string(9u << 20, 'A')), Catch::Contains("too long"));
    CHECK_THROWS_AS(models::parseTei("<space quantity=\"999999999\" unit=\"character\"/>"),
                    models::TeiError);
    CHECK(models::parseTei(repeated("A<lb n=\"9\"/>", 20000)).reading.lines.size() == 20001);
    const std::chrono::duration<double> seconds = std::chrono::steady_clock::now() - start;
    CHECK(seconds.count() < 30);  // well under a second; a sanitizer's build takes its time
}

TEST_CASE("Damaged text is refused as TEI", "[exchange][tei]")
{
    struct Case {
        std::string xml, reason;
    };
    const Case cases[] = {
        {"A\xFF", "not UTF-8"},
        {"A\xC0\x80", "not UTF-8"},
        {"A\xED\xA0\x80", "not UTF-8"},
        {std::string("A\0B", 3), "not well-formed"},
        {"<unclear>A", "not well-formed"},
        {"</ab><ab>", "not well-formed"},
        {"<hi rend=\"a\" rend=\"b\">A</hi>", "not well-formed"},
        {"<x:hi>A</x:hi>", "namespace"},
        {"<hi xmlns=\"http://a.invalid/\">A</hi>", "namespace"},
        {"<hi onclick=\"x\">A</hi>", "attribute onclick"},
        {"\xCC\x81", "accent"},
        {"<gap reason=\"lost\" atLeast=\"5\" atMost=\"3\" unit=\"character\"/>", "no less"},
        {"<gap reason=\"lost\" quantity=\"0\" unit=\"character\"/>", "above 0"},
        {"<supplied reason=\"lost\"><gap reason=\"lost\" quantity=\"1\" unit=\"character\"/>"
         "</supplied>",
         "cannot be a gap"},
        {"<supplied reason=\"lost\"><unclear>A</unclear></supplied>", "cannot be unclear"},
        {"<choice><unclear>10</unclear><unclear>16</unclear></choice>", "one letter"},
        {"<g type=\"anchor\"/>", "no symbol"},
        {"<lb n=\"1\" rend=\"middle-open\"/>", "left- or right-"},
        {"<lb n=\"1\" facs=\"px:1,2\"/>", "4 numbers"},
        {"<lb n=\"1\" ana=\"role:cook/0-1\"/>", "role"},
        {"<seg resp=\"#me\">A</seg>", "percent-encoded"},
        {"<seg type=\"cell\">A<unclear>B</unclear></seg>", "one letter or one stretch"},
    };
    for (const Case& one : cases) {
        CAPTURE(one.xml);
        CHECK_THROWS_AS(models::parseTei(one.xml), models::TeiError);
        CHECK_THROWS_WITH(models::parseTei(one.xml), Catch::Contains(one.reason));
    }
    CHECK_THROWS_AS(models::parseTeiDocument(""), models::TeiError);
    CHECK_THROWS_AS(models::parseTeiDocument("<html xmlns=\"http://www.tei-c.org/ns/1.0\"/>"),
                    models::TeiError);
    CHECK_THROWS_WITH(
        models::parseTeiDocument(documentOf("", "A</ab></div><div type=\"edition\"><ab>B")),
        Catch::Contains("there are 2"));
}

TEST_CASE("Whatever the text is, nothing is printed about it", "[exchange][tei]")
{
    std::FILE* caught = std::tmpfile();
    REQUIRE(caught);
    const int standard_error = ::dup(2);
    ::dup2(::fileno(caught), 2);
    for (const char* xml : {"<lb n=\"1\" xml:id=\"\"/>A", "<a", "<x:b/>", "<lb n=\"1\" n=\"2\"/>"})
        try {
            models::parseTei(xml);
        } catch (const models::TeiError&) {
        }
    ::dup2(standard_error, 2);
    ::close(standard_error);
    CHECK(::lseek(::fileno(caught), 0, SEEK_END) == 0);
    std::fclose(caught);
}
