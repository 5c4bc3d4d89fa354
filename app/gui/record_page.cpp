#include "app/gui/record_page.h"

#include <QObject>
#include <QStringList>
#include <algorithm>

#include "app/flow/item_facts.h"
#include "app/gui/dating_page.h"
#include "app/gui/fact_words.h"
#include "models/archive/record_names.h"
#include "models/archive/standing.h"
#include "models/leiden.h"

namespace gui {

namespace {

QString escaped(const std::string& text)
{
    return QString::fromStdString(text).toHtmlEscaped();
}

QString linesOf(const models::Reading& reading)
{
    QStringList lines;
    for (const models::Line& line : reading.lines)
        lines << escaped(models::toLeiden(line));
    return lines.isEmpty() ? QObject::tr("<i>nothing read</i>") : lines.join("<br>");
}

QString paragraph(const models::ReadingRecord& record)
{
    QString shown;
    if (record.reading.candidates_were_shown)
        shown = *record.reading.candidates_were_shown ? QObject::tr(", makers in view")
                                                      : QObject::tr(", makers not in view");
    return QString("<p><b>%1</b><br><small>%2%3 %4</small></p>")
        .arg(linesOf(record.reading), escaped(record.reading.reader), shown,
             escaped(record.recorded_at));
}

QString conclusionHtml(const models::AttributionRecord& attribution, bool stands)
{
    const QString maker = attribution.maker_name.empty() ? QObject::tr("maker not concluded")
                                                         : escaped(attribution.maker_name);
    const QString date =
        attribution.date_edtf.empty() ? QObject::tr("undated") : escaped(attribution.date_edtf);
    QString text = QString("<p><b>%1, %2</b>: %3 <small>(%4%5)</small>")
                       .arg(maker, date, QObject::tr(models::nameOf(attribution.certainty)),
                            escaped(attribution.recorded_by),
                            stands ? QString() : QObject::tr(", replaced since"));
    if (!attribution.reasons.empty())
        text += "<br>" + escaped(attribution.reasons);
    return text + "</p>";
}

QString conclusionsHtml(const models::ItemRecord& item)
{
    const auto standing = models::standingAttributions(item);
    QString text;
    if (standing.size() > 1)
        text += "<p>" + QObject::tr("Rival conclusions stand side by side:") + "</p>";
    for (auto it = item.attributions.rbegin(); it != item.attributions.rend(); ++it)
        text +=
            conclusionHtml(*it, std::find(standing.begin(), standing.end(), *it) != standing.end());
    return text;
}

QString rowHtml(const QString& name, const QString& value)
{
    return value.isEmpty() ? QString()
                           : "<tr><td>" + name + "&nbsp;&nbsp;</td><td>" + value + "</td></tr>";
}

QString withNote(const QString& value, const std::string& note)
{
    return note.empty() ? value : value + ", " + escaped(note);
}

// What was taken back stays in the record and says so.
bool isTakenBack(const models::ItemRecord& item, const std::string& id)
{
    return std::any_of(item.corrections.begin(), item.corrections.end(), [&](const auto& one) {
        return one.field == "withdrawn" && one.about_id == id;
    });
}

QString typeName(const std::string& id, const models::MakerRegister* known)
{
    const models::ItemType* type = known ? known->itemType(id) : nullptr;
    return escaped(type ? type->nameWithPattern() : id);
}

QString featureName(const std::string& id, const models::MakerRegister* known)
{
    const models::Feature* feature = known ? known->feature(id) : nullptr;
    return escaped(feature ? feature->name : id);
}

QString factsHtml(const models::ItemRecord& item, const models::MakerRegister* known)
{
    const auto told = [&](const QString& value, const std::string& id) {
        return isTakenBack(item, id) ? "<s>" + value + "</s> " + QObject::tr("(taken back)")
                                     : value;
    };
    QString text = rowHtml(QObject::tr("type"), typeName(item.type_id, known)) +
                   rowHtml(QObject::tr("owner"), escaped(item.owner)) +
                   rowHtml(QObject::tr("condition"), escaped(item.condition)) +
                   rowHtml(QObject::tr("place found"), escaped(item.place_found)) +
                   rowHtml(QObject::tr("notes"), escaped(item.notes));
    for (const models::FeatureSeenRecord& feature : models::standingFeatures(item))
        text += rowHtml(featureName(feature.feature_id, known),
                        withNote(seenWords()[static_cast<int>(feature.seen) + 1], feature.notes));
    for (const models::MeasurementRecord& one : item.measurements)
        text += rowHtml(
            escaped(one.what),
            told(withNote(escaped(flow::lengthInWords(one.value, one.unit)), one.how), one.id));
    for (const models::DatedEventRecord& event : item.dated_events)
        text += rowHtml(eventWords()[static_cast<int>(event.kind)],
                        told(escaped(event.edtf), event.id));
    return "<table>" + text + "</table>";
}

QString stampHeading(const models::StampRecord& stamp, int number)
{
    QStringList words{QObject::tr("Stamp %1").arg(number)};
    if (stamp.part != models::StampPart::Unknown)
        words << QObject::tr("on %1").arg(partWords()[placeOfPart(stamp.part)]);
    if (!stamp.place.empty())
        words << escaped(stamp.place);
    if (stamp.method != models::StampMethod::Unknown)
        words << methodWords()[placeOfMethod(stamp.method)];
    if (!stamp.ink_colour.empty())
        words << escaped(stamp.ink_colour);
    if (stamp.later_added)
        words << QObject::tr("looks later added");
    return "<h4>" + words.join(", ") + "</h4>";
}

QString stampsHtml(const models::ItemRecord& item)
{
    QString text;
    int number = 0;
    for (const models::StampRecord& stamp : item.stamps) {
        text += stampHeading(stamp, ++number);
        for (const models::ViewRecord& view : stamp.views)
            for (auto it = view.readings.rbegin(); it != view.readings.rend(); ++it)
                text += paragraph(*it);
        for (auto it = stamp.readings.rbegin(); it != stamp.readings.rend(); ++it)
            text += paragraph(*it);
    }
    return text;
}

// What of a record was corrected, by the archive's names.
QString correctedWord(const std::string& name)
{
    const std::pair<const char*, QString> words[] = {
        {"item", QObject::tr("piece:")},
        {"stamp", QObject::tr("stamp:")},
        {"dated_event", QObject::tr("date on it")},
        {"feature_seen", QObject::tr("detail")},
        {"measurement", QObject::tr("measurement")},
        {"type_id", QObject::tr("type")},
        {"owner", QObject::tr("owner")},
        {"condition", QObject::tr("condition")},
        {"place_found", QObject::tr("place found")},
        {"notes", QObject::tr("notes")},
        {"part", QObject::tr("the part it is on")},
        {"place", QObject::tr("where on the part")},
        {"method", QObject::tr("how it was made")},
        {"ink_colour", QObject::tr("ink colour")},
        {"frame", QObject::tr("frame")},
        {"later_added", QObject::tr("looks later added")}};
    for (const auto& [known, word] : words)
        if (name == known)
            return word;
    return escaped(name);
}

QString correctionsHtml(const models::ItemRecord& item)
{
    QString text;
    for (const models::CorrectionRecord& one : item.corrections)
        text +=
            "<li>" +
            (one.field == "withdrawn" ? QObject::tr("%1 taken back: %2")
                                            .arg(correctedWord(one.about), escaped(one.value))
                                      : QObject::tr("%1 %2 was \u201c%3\u201d, is \u201c%4\u201d")
                                            .arg(correctedWord(one.about), correctedWord(one.field),
                                                 escaped(one.before), escaped(one.value))) +
            " <small>(" + escaped(one.recorded_by) + ", " + escaped(one.recorded_at) +
            ")</small></li>";
    return text.isEmpty() ? text
                          : "<h4>" + QObject::tr("Corrected since") + "</h4><ul>" + text + "</ul>";
}

}  // namespace

QString recordName(const models::ItemRecord& item)
{
    return item.accession_number.empty() ? QObject::tr("seen, not owned")
                                         : QString::fromStdString(item.accession_number);
}

QString recordPage(const models::ItemRecord& item, const std::vector<models::PartDating>* dating,
                   const models::MakerRegister* known)
{
    QString page = "<h3>" +
                   (item.accession_number.empty() ? QObject::tr("Seen, not owned")
                                                  : escaped(item.accession_number)) +
                   "</h3>";
    page += conclusionsHtml(item) + factsHtml(item, known);
    if (dating)
        page += "<h4>" + QObject::tr("What the evidence gives now") + "</h4>" + datingPage(*dating);
    page += stampsHtml(item) + correctionsHtml(item);
    page += "<p><small>" +
            QObject::tr("Recorded by %1, %2")
                .arg(escaped(item.recorded_by), escaped(item.recorded_at)) +
            "</small></p>";
    return page;
}

}  // namespace gui
