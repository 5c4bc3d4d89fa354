// Any text as TEI, as an edition's fragment and as a document: it is refused with a TeiError, or
// what it said is written so that it says the same again.
#include "models/exchange/tei.h"
#include "tests/fuzz/fuzz_driver.h"

namespace {

void promise(bool holds, const char* what)
{
    if (!holds)
        fuzz::failed(what);
}

bool isUnderstood(const std::string& fragment)
{
    models::TeiText text;
    try {
        text = models::parseTei(fragment);
    } catch (const models::TeiError& error) {
        promise(error.what()[0] != 0, "a refusal says why");
        return false;
    }
    try {
        const std::string written = models::writeTei(text);
        const models::TeiText again = models::parseTei(written);
        promise(again == text, "what was understood comes back");
        promise(models::writeTei(again) == written, "it is written alike each time");
    } catch (const std::exception& error) {
        fuzz::failed(std::string("what was understood can be written and read: ") + error.what());
    }
    return true;
}

bool isUnderstoodDocument(const std::string& xml)
{
    models::TeiDocument document;
    try {
        document = models::parseTeiDocument(xml);
    } catch (const models::TeiError&) {
        return false;
    }
    try {
        const models::TeiDocument again =
            models::parseTeiDocument(models::writeTeiDocument(document));
        promise(again == document, "the document comes back");
    } catch (const std::exception& error) {
        fuzz::failed(std::string("a document can be written and read: ") + error.what());
    }
    return true;
}

}  // namespace

FuzzSeeds fuzzSeeds()
{
    models::TeiDocument document;
    document.title = "Strap";
    document.text.reading.reader = "A. Person";
    document.text.reading.basis = models::Basis::Photo;
    document.text.reading.options = "x=1";
    document.text.reading.lines.resize(2);
    document.text.reading.lines[0].cells = {models::clearCell("A"), models::clearCell("\u2191")};
    return {{"T.V.No.",
             "<damage>1940</damage>",
             "19<unclear>40</unclear>",
             "194<unclear cert=\"low\" reason=\"faded\">0</unclear>",
             "194<choice><unclear>0</unclear><unclear cert=\"0.2\">6</unclear></choice>",
             "<gap reason=\"lost\" quantity=\"7\" unit=\"character\" precision=\"low\"/>",
             "<gap reason=\"illegible\" atLeast=\"4\" atMost=\"6\" unit=\"character\"/>",
             "<gap reason=\"lost\" extent=\"unknown\" unit=\"line\"><certainty match=\"..\" "
             "locus=\"name\"/></gap>",
             "<gap reason=\"lost\" quantity=\"1\" unit=\"character\"><desc type=\"guess\" "
             "cert=\"0.5\">B</desc></gap>",
             "<supplied reason=\"lost\" cert=\"low\">19</supplied>40",
             "<supplied reason=\"lost\" evidence=\"parallel\">T</supplied>V",
             "<supplied reason=\"lost\" evidence=\"previouseditor\">T</supplied>V",
             "<expan><abbr>Co</abbr><ex cert=\"low\">mpany</ex></expan>",
             "<subst><del>1938</del><add place=\"overstrike\">1942</add></subst>",
             "<choice><corr>Co</corr><sic>C0</sic></choice>",
             "<del rend=\"erasure\">1938</del>",
             "<space quantity=\"3\" unit=\"character\"/>",
             "<hi rend=\"ligature\">ab</hi>",
             "<lb n=\"1\"/>EQUIP<lb n=\"2\" break=\"no\"/>MENT",
             "<g type=\"broad-arrow\"/>",
             "<date notBefore=\"1940\" notAfter=\"1949\">194</date>",
             "<lb n=\"1\" rend=\"left-complete right-cut-off\" facs=\"px:1,2,3,4.5\" cert=\"0.5\" "
             "ana=\"role:maker/0-2/0.5 role:date/1-1\"/><seg resp=\"by:A%20B\">A<seg type=\"cell\" "
             "facs=\"px:1,2\" cert=\"0.7\">B</seg></seg>",
             "<seg type=\"cell\" subtype=\"doubtful-no-letter\"/>",
             "<choice><seg cert=\"0.9\">2</seg><seg type=\"cell\" cert=\"0\">ZZ</seg></choice>",
             models::writeTeiDocument(document)},
            {"<lb/>",
             "<lb n=\"2\"/>",
             "<hi>",
             "</hi>",
             "<unclear>",
             "</unclear>",
             "<supplied>",
             " reason=\"lost\"",
             " cert=\"low\"",
             " type=\"cell\"",
             " unit=\"line\"",
             "<choice>",
             "</choice>",
             "&amp;",
             "&#10;",
             "&#x301;",
             "&x;",
             "<![CDATA[",
             "]]>",
             "<!--",
             "-->",
             "\n",
             "  ",
             "<!DOCTYPE x>",
             "<?x?>",
             "<seg type=\"cell\">",
             "</seg>",
             "<g type=\"broad-arrow\"/>",
             "<gap reason=\"lost\" extent=\"unknown\" unit=\"character\"/>",
             "\xCC\x81",
             "0",
             "999999999",
             "-1",
             "1e308",
             "nan",
             " xmlns=\"http://a.invalid/\"",
             " xml:id=\"a\""}};
}

bool fuzzOne(std::string_view text)
{
    const std::string xml(text);
    const bool fragment = isUnderstood(xml);
    return isUnderstoodDocument(xml) || fragment;
}
