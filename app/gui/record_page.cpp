#include "app/gui/record_page.h"

#include <QObject>
#include <QStringList>

#include "models/archive/record_names.h"
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

QString conclusion(const models::AttributionRecord& attribution)
{
    const QString maker = attribution.maker_name.empty() ? QObject::tr("maker not concluded")
                                                         : escaped(attribution.maker_name);
    const QString date =
        attribution.date_edtf.empty() ? QObject::tr("undated") : escaped(attribution.date_edtf);
    QString text = QString("<p><b>%1, %2</b>: %3 <small>(%4)</small>")
                       .arg(maker, date, QObject::tr(models::nameOf(attribution.certainty)),
                            escaped(attribution.recorded_by));
    if (!attribution.reasons.empty())
        text += "<br>" + escaped(attribution.reasons);
    return text + "</p>";
}

}  // namespace

QString recordPage(const models::ItemRecord& item)
{
    QString page = "<h3>" +
                   (item.accession_number.empty() ? QObject::tr("Seen, not owned")
                                                  : escaped(item.accession_number)) +
                   "</h3>";
    if (!item.type_id.empty())
        page += "<p>" + escaped(item.type_id) + "</p>";
    if (!item.notes.empty())
        page += "<p>" + escaped(item.notes) + "</p>";
    for (auto it = item.attributions.rbegin(); it != item.attributions.rend(); ++it)
        page += conclusion(*it);
    int number = 0;
    for (const models::StampRecord& stamp : item.stamps) {
        page += "<h4>" + QObject::tr("Stamp %1").arg(++number) + "</h4>";
        for (const models::ViewRecord& view : stamp.views)
            for (auto it = view.readings.rbegin(); it != view.readings.rend(); ++it)
                page += paragraph(*it);
        for (auto it = stamp.readings.rbegin(); it != stamp.readings.rend(); ++it)
            page += paragraph(*it);
    }
    page += "<p><small>" +
            QObject::tr("Recorded by %1, %2")
                .arg(escaped(item.recorded_by), escaped(item.recorded_at)) +
            "</small></p>";
    return page;
}

}  // namespace gui
