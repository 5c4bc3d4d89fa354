// For everyone: other languages, larger letters, every contrast, keyboards alone.
#include <QAbstractButton>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QRegularExpression>
#include <QTranslator>
#include <catch2/catch.hpp>

#include "app/gui/archive_pane.h"
#include "app/gui/cell_strip.h"
#include "app/gui/fact_table.h"
#include "app/gui/help_overlay.h"
#include "app/gui/key_list.h"
#include "app/gui/look.h"
#include "app/gui/own_icon.h"
#include "app/gui/record_page.h"
#include "app/gui/stamp_view.h"
#include "app/gui/tray.h"
#include "tests/gui/window_harness.h"

using gui_tests::WindowHarness;

namespace {

// Puts every text that goes through translation between brackets, a third longer.
class BracketTranslator : public QTranslator {
public:
    using QTranslator::QTranslator;
    bool isEmpty() const override { return false; }
    QString translate(const char*, const char* source, const char*, int) const override
    {
        const QString text = QString::fromUtf8(source);
        return QString("\u27E6") + text + QString(text.size() / 3, QChar(0x00E9)) + "\u27E7";
    }
};

bool hasWords(const QString& text)
{
    return std::any_of(text.begin(), text.end(), [](QChar letter) { return letter.isLetter(); });
}

// Every text of the window that a person can see or hear, with the widget that has it.
std::vector<std::pair<QString, QString>> textsOf(QWidget& window)
{
    std::vector<std::pair<QString, QString>> texts;
    for (QWidget* widget : window.findChildren<QWidget*>()) {
        const QString name = widget->objectName();
        const auto add = [&](const QString& text) {
            if (hasWords(text))
                texts.emplace_back(name, text);
        };
        if (name.startsWith("qt_"))
            continue;
        add(widget->accessibleName());
        add(widget->toolTip());
        if (auto label = qobject_cast<QLabel*>(widget); label && label->objectName() != "photoName")
            add(label->text());
        if (auto button = qobject_cast<QAbstractButton*>(widget))
            add(button->text());
        if (auto field = qobject_cast<QLineEdit*>(widget))
            add(field->placeholderText());
        if (auto field = qobject_cast<QPlainTextEdit*>(widget))
            add(field->placeholderText());
    }
    return texts;
}

// What stands in a page outside of every translated text, without what are data.
QString untranslated(QString page, const QStringList& data)
{
    page.replace("&nbsp;", " ");
    page.remove(QRegularExpression("<[^>]*>"));
    QString left;
    int depth = 0;
    for (const QChar letter : page) {
        depth += letter == QChar(0x27E6) ? 1 : 0;
        if (depth == 0)
            left += letter;
        depth -= letter == QChar(0x27E7) ? 1 : 0;
    }
    for (const QString& one : data)
        left.remove(one);
    return left;
}

// Fills a record's page in as far as words of the window's own appear in it.
void fillRecord(WindowHarness& person)
{
    gui::FilingFields fields = person.session().fields();
    fields.accession_number = "SHT.1";
    fields.type_id = "belt-1937";
    fields.owner = "Trust";
    fields.features["end-tab"] = {models::FeatureSeen::CannotBeSeen, {}};
    fields.measurements = {{{}, "length", "914 mm", {}}};
    fields.events = {{{}, models::EventKind::Inspected, "1941", {}}};
    fields.stamps[person.session().stamp()->id] = {
        models::StampPart::Fitting, {}, models::StampMethod::Stencil, {}, true};
    fields.date_edtf = "1938";
    person.session().setFields(fields);
}

struct Translated {
    Translated() { QApplication::installTranslator(&translator); }
    ~Translated() { QApplication::removeTranslator(&translator); }
    BracketTranslator translator;
};

}  // namespace

TEST_CASE("In another language no text of the window is left behind", "[app][gui][everyone]")
{
    const Translated translated;
    WindowHarness person;
    CHECK(person.window().windowTitle().contains(QChar(0x27E6)));
    person.openDrawn();
    person.key(Qt::Key_PageUp, Qt::ControlModifier);
    for (const Qt::Key tray : {Qt::Key_F9, Qt::Key_F10, Qt::Key_F11, Qt::Key_F12}) {
        person.key(tray);
        for (const auto& [widget, text] : textsOf(person.window())) {
            static const QRegularExpression key_alone("^F[0-9]+$");
            if (text.contains("strap.png") || text.contains(key_alone))  // a file's name, a key's
                continue;
            CAPTURE(widget.toStdString(), text.toStdString());
            CHECK((text.contains(QChar(0x27E6)) || widget.isEmpty()));
        }
    }
    for (const gui::KeyGroup& group : gui::keyGroups()) {
        CHECK(group.title.contains(QChar(0x27E6)));
        for (const gui::KeyHelp& help : group.keys)
            CHECK(help.does.contains(QChar(0x27E6)));
    }
    // Sentences for the person too.
    person.key(Qt::Key_Escape);
    person.key(Qt::Key_J, Qt::ControlModifier);
    person.key(Qt::Key_J, Qt::ControlModifier);
    CHECK(person.message().contains(QChar(0x27E6)));
}

TEST_CASE("In another language the record's page is all in that language",
          "[app][gui][everyone][record]")
{
    const Translated translated;
    WindowHarness person;
    person.openDrawn();
    fillRecord(person);
    person.key(Qt::Key_S, Qt::ControlModifier);
    for (const auto& [widget, text] : textsOf(person.window())) {
        static const QRegularExpression key_alone("^F[0-9]+$");
        CAPTURE(widget.toStdString(), text.toStdString());
        if (!text.contains("strap.png") && !text.contains(key_alone))
            CHECK((text.contains(QChar(0x27E6)) || widget.isEmpty()));
    }
    const QStringList data{"length", "914 mm (35.98 in)", "914 mm", "in", "1941"};
    const gui::FactModel& facts = person.window().findChild<gui::FactTable*>()->facts();
    for (int row = 0; row < facts.rowCount(); ++row)
        for (int column = 0; column < facts.columnCount(); ++column) {
            const QModelIndex index = facts.index(row, column);
            const bool is_feature =
                facts.rows()[static_cast<std::size_t>(row)].kind == gui::FactKind::Feature;
            const QString text = index.data().toString();
            CAPTURE(row, column, text.toStdString());
            if (!is_feature || column > 0)  // a detail has its name from the register
                CHECK_FALSE(hasWords(untranslated(text, data)));
            for (const QString& choice : index.data(gui::FactModel::ChoicesRole).toStringList())
                CHECK_FALSE(hasWords(untranslated(choice, {})));
        }
    for (const char* name : {"certainty", "maker", "itemType"}) {
        CAPTURE(name);
        CHECK(person.window().findChild<QComboBox*>(name)->itemText(0).contains(QChar(0x27E6)));
    }
    person.key(Qt::Key_S, Qt::ControlModifier);
    REQUIRE(person.sitting().record());
    gui::FilingFields after = person.session().fields();
    after.owner = "another";
    after.measurements.clear();
    person.session().setFields(after);
    person.sitting().fileRecord({});
    const QString page = gui::recordPage(*person.sitting().look("SHT.1"));
    const QString left =
        untranslated(page, {"SHT.1", "belt-1937", "end-tab", "Trust", "another", "length",
                            "914 mm (35.98 in)", "1938", "1941", "Maud Pell", "fake-reader 1",
                            "taken out", "HART LTD", "1956-03-01T12:00:00Z"});
    CAPTURE(left.toStdString());
    CHECK_FALSE(hasWords(left));
}

TEST_CASE("With letters of one to two times the size nothing is cut off or overlaps",
          "[app][gui][everyone]")
{
    const QFont usual = QApplication::font();
    for (const double times : {1.0, 1.25, 1.5, 2.0}) {
        QFont font = usual;
        font.setPointSizeF(usual.pointSizeF() * times);
        QApplication::setFont(font);
        WindowHarness person;
        person.window().resize(1280, 800);
        person.openDrawn();
        QTest::qWait(20);
        auto view = person.window().findChild<gui::StampView*>();
        CAPTURE(times);
        for (const gui::CellStrip* strip : view->strips()) {
            const auto& rects = strip->cellRects();
            for (std::size_t i = 1; i < rects.size(); ++i)
                CHECK(rects[i].left() >= rects[i - 1].right() - 0.5);
            CHECK(rects.back().right() <= view->widget()->width());
            CHECK(strip->height() >= gui::CellStrip::heightFor(strip->font(), 1));
        }
        // What is in view has at least the height that its words need.
        for (const QLabel* label : person.window().findChildren<QLabel*>())
            if (label->isVisible() && !label->text().isEmpty()) {
                CAPTURE(label->objectName().toStdString(), label->text().toStdString());
                CHECK(label->height() >= QFontMetrics(label->font()).height() - 1);
            }
        CHECK(person.window().width() <= 1280);
        CHECK(person.window().height() <= 800);
    }
    QApplication::setFont(usual);
}

TEST_CASE("Tab leads through every field of the form and back to the first", "[app][gui][everyone]")
{
    WindowHarness person;
    person.openDrawn();
    person.key(Qt::Key_S, Qt::ControlModifier);
    QStringList way;
    for (int i = 0; i < 13; ++i) {
        way << person.focus()->objectName();
        person.key(Qt::Key_Tab);
    }
    CHECK(way == QStringList{"accessionNumber", "itemType", "owner", "placeFound", "condition",
                             "notes", "maker", "date", "certainty", "reasons", "facts", "evidence",
                             "fileButton"});
    for (int i = 0; i < 4 && person.focus()->objectName() != "accessionNumber"; ++i)
        person.key(Qt::Key_Tab);  // by way of the letters
    CHECK(person.focus()->objectName() == "accessionNumber");
}

TEST_CASE("Every drawing is there, and seen against its ground", "[app][gui][look]")
{
    for (const char* name : {"photo", "to-read", "meaning", "archive", "text", "filing"}) {
        const QImage icon = gui::ownIcon(name, Qt::black)
                                .pixmap(24, 24)
                                .toImage()
                                .convertToFormat(QImage::Format_ARGB32);
        int inked = 0;
        for (int y = 0; y < icon.height(); ++y)
            for (int x = 0; x < icon.width(); ++x)
                inked += qAlpha(icon.pixel(x, y)) > 128 ? 1 : 0;
        CAPTURE(name);
        CHECK(inked > 30);
    }
    CHECK(gui::ownIcon("no such drawing", Qt::black).pixmap(24, 24).toImage() ==
          gui::ownIcon("nor this", Qt::black).pixmap(24, 24).toImage());
    CHECK_FALSE(gui::programIcon().isNull());
}

TEST_CASE("An empty window says what to do first, in every tray", "[app][gui][everyone]")
{
    WindowHarness person;
    const QImage bare = person.window().grab().toImage();
    CHECK_FALSE(bare.isNull());
    person.key(Qt::Key_S, Qt::ControlModifier);
    CHECK(person.window().findChild<QLabel*>("filingTrouble")->text().contains("Open a photo"));
    person.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(person.message().contains("Ctrl+O"));
    person.key(Qt::Key_Return, Qt::AltModifier);
    CHECK(person.message().contains("Open a photo"));
    person.key(Qt::Key_F12);
    CHECK(person.window().findChild<QLabel*>("foundCount")->text().contains("nothing"));
    // The line at the foot has no keys of letters where there are none, and is not cut off.
    person.key(Qt::Key_Escape, Qt::NoModifier, 2);
    const auto hints = person.window().findChild<QLabel*>("hints");
    CHECK(hints->text().contains("Ctrl+O"));
    CHECK_FALSE(hints->text().contains("Shift+Enter"));
    CHECK(hints->text() == hints->accessibleName());
    person.openDrawn();
    CHECK(hints->accessibleName().contains("Shift+Enter"));
}
