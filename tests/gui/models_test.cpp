#include <QAbstractItemModelTester>
#include <catch2/catch.hpp>

#include "app/gui/candidate_model.h"
#include "app/gui/found_model.h"
#include "app/gui/photo_queue.h"

using Tester = QAbstractItemModelTester;

namespace {

models::Candidate candidate(const std::string& id, double probability)
{
    models::Candidate made;
    made.maker_id = id;
    made.maker = "Maker " + id;
    made.mark = id;
    made.probability = probability;
    return made;
}

}  // namespace

TEST_CASE("The candidates' table keeps the rules of item models", "[app][gui][model]")
{
    gui::CandidateModel model;
    Tester tester(&model, Tester::FailureReportingMode::Fatal);
    CHECK(model.rowCount() == 0);
    CHECK(model.candidate(0) == nullptr);

    models::CandidateList list;
    list.candidates = {candidate("a", 0.5), candidate("b", 0.1)};
    list.candidates[0].edtf = "194X";
    list.other_makers = 0.1;
    list.unknown_maker = 0.3;
    model.setCandidates(list);

    REQUIRE(model.rowCount() == 4);
    CHECK(model.candidate(0)->maker_id == "a");
    CHECK(model.candidate(1) == nullptr);  // none of the known: likelier than b
    CHECK(model.index(1, 0).data().toString() == "none of the known makers");
    CHECK(model.index(1, gui::CandidateModel::Share).data().toString() == "30 %");
    CHECK(model.candidate(2)->maker_id == "b");
    CHECK(model.candidate(3) == nullptr);
    CHECK(model.index(3, 0).data().toString() == "all other makers");
    CHECK(model.index(0, gui::CandidateModel::Years).data().toString() == "194X");
    CHECK(model.index(2, gui::CandidateModel::Years).data().toString() == "undated");
    double sum = 0;
    for (int row = 0; row < model.rowCount(); ++row)
        sum += model.index(row, 0).data(gui::CandidateModel::share_role).toDouble();
    CHECK(sum == Approx(1).margin(1e-9));

    list.candidates.clear();
    list.unknown_maker = 0.9;
    model.setCandidates(list);
    CHECK(model.rowCount() == 2);
    model.clear();
    CHECK(model.rowCount() == 0);
}

TEST_CASE("The table of records found keeps the rules of item models", "[app][gui][model]")
{
    gui::FoundModel model;
    Tester tester(&model, Tester::FailureReportingMode::Fatal);
    models::FoundItem first, second;
    first.id = "first";
    first.accession_number = "SHT.1";
    first.date_edtf = "1938";
    second.id = "second";
    model.setFound({first, second});
    CHECK(model.rowCount() == 2);
    CHECK(model.index(0, gui::FoundModel::Date).data().toString() == "1938");
    CHECK(model.index(1, gui::FoundModel::Accession).data().toString() == "(not owned)");
    CHECK(model.item(2) == nullptr);
    model.setFound({});
    CHECK(model.rowCount() == 0);
}

TEST_CASE("The row of photos keeps the rules of item models and each photo once",
          "[app][gui][model]")
{
    gui::PhotoQueue queue;
    Tester tester(&queue, Tester::FailureReportingMode::Fatal);
    CHECK(queue.add("/photos/a.jpg") == 0);
    CHECK(queue.add("/photos/b.jpg") == 1);
    CHECK(queue.add("/photos/../photos/a.jpg") == 0);
    CHECK(queue.rowCount() == 2);
    CHECK(queue.stillToRead() == 2);
    queue.setState(0, gui::PhotoState::Filed);
    CHECK(queue.stillToRead() == 1);
    CHECK(queue.index(0).data().toString().contains("filed"));
    CHECK(queue.find("/photos/c.jpg") == -1);
}
