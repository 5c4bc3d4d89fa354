// How many key presses the 24 samples take in the window, from dropping their folder to the filed
// records, by someone who can read them: window_session. The pictures are made.
#include <QApplication>
#include <QDropEvent>
#include <QMimeData>
#include <fstream>
#include <iomanip>
#include <iostream>
#include <map>
#include <nlohmann/json.hpp>
#include <opencv2/imgproc.hpp>

#include "app/gui/candidate_list.h"
#include "tests/bench/scripted_reader.h"

namespace {

namespace fs = std::filesystem;
using bench::ScriptedReader;
using gui_tests::WindowHarness;

struct Truth {
    std::string maker_id;
    std::vector<std::pair<vision::Quad, std::vector<std::string>>> stamps;
};

Truth truthOf(const fs::path& photo)
{
    std::ifstream in(fs::path(photo).replace_extension(".truth.json"));
    const auto json = nlohmann::json::parse(in);
    Truth truth{json.at("maker_id").get<std::string>(), {}};
    for (const auto& stamp : json.at("stamps")) {
        vision::Quad corners;
        for (std::size_t i = 0; i < 4; ++i)
            corners[i] = {stamp.at("outline").at(i).at(0).get<float>(),
                          stamp.at("outline").at(i).at(1).get<float>()};
        truth.stamps.emplace_back(corners, stamp.at("lines").get<std::vector<std::string>>());
    }
    return truth;
}

double commonArea(const vision::Quad& a, const vision::Quad& b)
{
    std::vector<cv::Point2f> common;
    return cv::intersectConvexConvex(std::vector<cv::Point2f>(a.begin(), a.end()),
                                     std::vector<cv::Point2f>(b.begin(), b.end()), common);
}

struct Count {
    int photos = 0, marks = 0, found = 0, right = 0, presses = 0, unread = 0, makers = 0;

    Count& operator+=(const Count& other)
    {
        photos += other.photos, marks += other.marks, found += other.found, right += other.right;
        presses += other.presses, unread += other.unread, makers += other.makers;
        return *this;
    }
};

void drop(WindowHarness& window, const std::vector<fs::path>& files)
{
    QMimeData data;
    QList<QUrl> urls;
    for (const fs::path& file : files)
        urls << QUrl::fromLocalFile(QString::fromStdString(file.string()));
    data.setUrls(urls);
    QDragEnterEvent enter({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window.window(), &enter);
    QDropEvent event({50, 50}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&window.window(), &event);
}

// Which mark a stamp on the table lies on.
std::map<int, std::size_t> markOfStamp(const gui::WorkSession& session, const Truth& truth)
{
    std::map<int, std::size_t> mark_of;
    for (std::size_t mark = 0; mark < truth.stamps.size(); ++mark) {
        int best = -1;
        double most = 0;
        for (std::size_t i = 0; i < session.stamps().size(); ++i) {
            const double area =
                commonArea(session.stamps()[i].outline.corners, truth.stamps[mark].first);
            if (area > most && !mark_of.count(static_cast<int>(i))) {
                most = area;
                best = static_cast<int>(i);
            }
        }
        if (best >= 0)
            mark_of[best] = mark;
    }
    return mark_of;
}

// Takes the true maker from the list, or says that it is none of them.
bool takeMaker(WindowHarness& window, ScriptedReader& person, const std::string& maker_id)
{
    auto list = window.window().findChild<gui::CandidateList*>();
    window.waitFor([&] { return list->model().rowCount() > 0; }, 5000);
    if (maker_id.empty()) {
        person.press(Qt::Key_Backspace, Qt::AltModifier);
        return true;
    }
    int row = -1;
    for (int i = 0; i < list->model().rowCount(); ++i)
        if (list->model().candidate(i) && list->model().candidate(i)->maker_id == maker_id)
            row = i;
    if (row > 0) {
        person.press(Qt::Key_F11);
        for (int i = 0; i < row; ++i)
            person.press(Qt::Key_Down);
    }
    row < 0 ? person.press(Qt::Key_Delete, Qt::AltModifier)  // leave it open
            : person.press(Qt::Key_Return, Qt::AltModifier);
    return row >= 0;
}

// Files what was confirmed and goes on by one key; a photo without a mark in two steps.
void fileAndGoOn(WindowHarness& window, ScriptedReader& person, bool has_mark)
{
    const int place = window.sitting().place();
    if (has_mark)
        person.press(Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
    const auto is_filed = [&] {
        return window.sitting().queue()->state(place) == gui::PhotoState::Filed;
    };
    constexpr int most_presses = 2;  // the record, then to file it
    for (int i = 0; i < most_presses && !is_filed(); ++i)
        person.press(Qt::Key_S, Qt::ControlModifier);
    if (window.sitting().place() == place)
        person.press(Qt::Key_N, Qt::ControlModifier);
}

Count readPhoto(WindowHarness& window, const Truth& truth)
{
    ScriptedReader person(window);
    Count count;
    count.photos = 1;
    count.marks = static_cast<int>(truth.stamps.size());
    gui::WorkSession& session = window.session();
    bool wrong_after = false;
    for (int stamp = 0; stamp < static_cast<int>(session.stamps().size());) {
        const auto marks = markOfStamp(session, truth);
        const bool is_mark = marks.count(stamp) > 0;
        const gui::StampWork& work = session.stamps()[static_cast<std::size_t>(stamp)];
        // Outlines that nobody takes for marks are left out of the record by themselves.
        if (!is_mark && !gui::isWorthFiling(work, session.person())) {
            ++stamp;
            continue;
        }
        if (!is_mark && count.found > 0 && marks.upper_bound(stamp) == marks.end()) {
            wrong_after = true;  // one key takes out all that are left
            break;
        }
        while (session.current() != stamp)
            person.press(session.current() < stamp ? Qt::Key_Right : Qt::Key_Left,
                         Qt::ControlModifier);
        if (!is_mark) {
            person.press(Qt::Key_Delete, Qt::ControlModifier);
            continue;
        }
        ++count.found;
        count.right += person.read(truth.stamps[marks.at(stamp)].second) ? 1 : 0;
        ++stamp;
    }
    if (wrong_after)
        person.press(Qt::Key_Backspace, Qt::ControlModifier | Qt::ShiftModifier);
    if (count.found > 0)
        count.makers = takeMaker(window, person, truth.maker_id) ? 1 : 0;
    fileAndGoOn(window, person, count.found > 0);
    count.presses = person.presses();
    count.unread = person.unread_typed();
    return count;
}

void print(const std::string& name, const Count& count)
{
    std::cout << std::left << std::setw(28) << name << std::right << std::setw(7) << count.marks
              << std::setw(7) << count.found << std::setw(7) << count.right << std::setw(8)
              << count.makers << std::setw(9) << count.presses << std::setw(8) << count.unread
              << std::setw(10) << std::fixed << std::setprecision(2)
              << (count.right > 0 ? 1.0 * count.presses / count.right : 0) << "\n";
}

}  // namespace

int main(int argc, char** argv)
{
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const fs::path source = WEFTMARK_SOURCE_DIR;
    const fs::path known = source / "models" / "register";
    WindowHarness window(gui::examinerOfFlow(known), known, gui_tests::readAhead);
    const std::vector<fs::path> folders{source / "sample_images" / "easy",
                                        source / "sample_images" / "medium",
                                        source / "sample_images" / "hard"};
    drop(window, folders);
    std::cout << std::left << std::setw(28) << "photo" << std::right
              << "  marks  found  right  makers  presses  unread  a mark\n";
    std::map<std::string, Count> levels;
    Count all;
    const int photos = window.sitting().queue()->rowCount();
    for (int i = 0; i < photos; ++i) {
        window.waitFor([&] { return window.sitting().session() != nullptr; }, 300000);
        if (!window.sitting().session())
            break;
        const fs::path file = window.sitting().queue()->file(window.sitting().place());
        const Count count = readPhoto(window, truthOf(file));
        print(file.parent_path().filename().string() + "/" + file.stem().string(), count);
        levels[file.parent_path().filename().string()] += count;
        all += count;
        QTest::qWait(20);
    }
    for (const auto& [level, count] : levels)
        print(level, count);
    print("all", all);
    std::cout << "Key presses from drop to filed record, letters typed where the engine left one "
                 "unread apart; a mark: per mark that is right then. The bar is 6.\n"
              << "records filed: " << window.sitting().find({}).size() << " of " << photos << "\n";
}
