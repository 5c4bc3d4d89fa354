#include "models/exchange/item_tei.h"

#include <catch2/catch.hpp>

#include "models/exchange/tei.h"
#include "tests/archive/sample_records.h"

namespace {

// The documents of a corpus, each as it stands in it.
std::vector<models::TeiDocument> documentsIn(const std::string& corpus)
{
    std::vector<models::TeiDocument> documents;
    const std::string end = "</TEI>";
    for (std::size_t at = corpus.find("<TEI "); at != std::string::npos;
         at = corpus.find("<TEI ", at + 1)) {
        const std::size_t behind = corpus.find(end, at) + end.size();
        documents.push_back(models::parseTeiDocument(corpus.substr(at, behind - at)));
    }
    return documents;
}

}  // namespace

TEST_CASE("What was read on an item is a TEI document that says the same", "[archive][tei]")
{
    models::ItemRecord item = support::itemReading("W. POL[...] / 19[.]1?");
    item.accession_number = "SHT <4>";
    item.owner = "Saltmere Harbour Trust";
    const models::TeiDocument document = models::parseTeiDocument(models::itemTei(item));
    CHECK(document.text.reading == item.stamps[0].readings[0].reading);
    CHECK(document.idno == "SHT <4>");
    CHECK(document.repository == "Saltmere Harbour Trust");
    CHECK(models::itemTei({}) == "");
}

TEST_CASE("Several readings are a corpus, those corrected left out", "[archive][tei]")
{
    models::ItemRecord item = support::itemReading("W. POLGLASE");
    item.id = "7";
    item.stamps.push_back(support::itemReading("1941").stamps[0]);
    models::StampRecord& stamp = item.stamps[0];
    stamp.readings[0].id = "a";
    stamp.readings.push_back({"b", support::typedReading("Ole", "W. POLGLASS"), "a", "", ""});
    stamp.views.resize(1);
    stamp.views[0].readings.push_back({"c", support::typedReading("Ines", "POLGLASE"), "", "", ""});

    const auto documents = documentsIn(models::itemTei(item));
    REQUIRE(documents.size() == 3);
    CHECK(documents[0].text.reading == stamp.readings[1].reading);
    CHECK(documents[1].text.reading == stamp.views[0].readings[0].reading);
    CHECK(documents[2].text.reading == item.stamps[1].readings[0].reading);
    CHECK(documents[0].title == "7, stamp 1");
    CHECK(documents[2].title == "7, stamp 2");
}
