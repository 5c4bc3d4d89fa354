#include <QAbstractItemModelTester>
#include <QImage>
#include <QPainter>
#include <catch2/catch.hpp>

#include "app/gui/candidate_model.h"
#include "app/gui/found_model.h"
#include "app/gui/photo_queue.h"
#include "app/gui/year_bars.h"

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

    REQUIRE(model.rowCount() == 3);  // none of the known makers has its bar above the table
    CHECK(model.candidate(0)->maker_id == "a");
    CHECK(model.candidate(1)->maker_id == "b");
    CHECK(model.candidate(2) == nullptr);
    CHECK(model.index(2, 0).data().toString() == "all other makers");
    CHECK(model.index(0, gui::CandidateModel::Years).data().toString() == "194X");
    CHECK(model.index(1, gui::CandidateModel::Years).data().toString() == "undated");
    double sum = list.unknown_maker;
    for (int row = 0; row < model.rowCount(); ++row)
        sum += model.index(row, 0).data(gui::CandidateModel::share_role).toDouble();
    CHECK(sum == Approx(1).margin(1e-9));

    list.candidates.clear();
    list.unknown_maker = 0.9;
    model.setCandidates(list);
    CHECK(model.rowCount() == 1);
    model.clear();
    CHECK(model.rowCount() == 0);
}

TEST_CASE("Makers that are hardly likely are one row with their sum until they are unfolded",
          "[app][gui][model]")
{
    gui::CandidateModel model;
    Tester tester(&model, Tester::FailureReportingMode::Fatal);
    models::CandidateList list;
    list.candidates = {candidate("a", 0.9), candidate("b", 0.009), candidate("c", 0.008)};
    list.other_makers = 0.01;
    model.setCandidates(list);
    REQUIRE(model.rowCount() == 2);
    CHECK(model.folded() == 2);
    CHECK(model.index(1, 0).data().toString().contains("2 makers under"));
    CHECK(model.index(1, 0).data(gui::CandidateModel::share_role).toDouble() == Approx(0.027));
    model.unfold();
    REQUIRE(model.rowCount() == 4);
    CHECK(model.candidate(2)->maker_id == "c");
    model.setCandidates(list);
    CHECK(model.rowCount() == 4);  // letters that change do not fold it again
    model.clear();
    model.setCandidates(list);
    CHECK(model.rowCount() == 2);
}

TEST_CASE("The likeliest year has its label, the others stand at regular steps",
          "[app][gui][model]")
{
    const auto middle = [](int year) { return (year - 1930) * 10.0 + 5; };
    const auto labels = gui::yearLabels(1930, 1958, 1938, 32, 290, middle);
    REQUIRE_FALSE(labels.empty());
    CHECK(labels.front().year == 1938);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        CHECK(labels[i].left >= 0);
        CHECK(labels[i].left + labels[i].width <= 290);
        CHECK((i == 0 || labels[i].year % 5 == 0));
        for (std::size_t k = 0; k < i; ++k)
            CHECK(std::abs(labels[i].left - labels[k].left) >= labels[i].width);
    }
    CHECK(gui::yearLabels(1938, 1938, 1938, 32, 30, middle).size() == 1);
}

TEST_CASE("A share of less than one percent looks nearly empty", "[app][gui][look]")
{
    QImage bar(200, 6, QImage::Format_RGB32);
    const auto inked = [&](double share) {
        bar.fill(Qt::white);
        QPainter painter(&bar);
        gui::paintShare(painter, bar.rect(), share, Qt::lightGray, Qt::black);
        int count = 0;
        for (int y = 0; y < bar.height(); ++y)
            for (int x = 0; x < bar.width(); ++x)
                count += bar.pixelColor(x, y) != QColor(Qt::white) ? 1 : 0;
        return 1.0 * count / (bar.width() * bar.height());
    };
    CHECK(inked(0.005) < 0.2);
    CHECK(inked(1) > 0.99);
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
