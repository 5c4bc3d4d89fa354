// The cells of facts that are written.
#include <QObject>

#include "app/gui/fact_rows.h"

namespace gui {

namespace {

// The text that a cell holds; nullptr where there is none to write.
std::string* textAt(FilingFields& fields, const FactRow& row, FactColumn column)
{
    const bool note = column == FactColumn::Note;
    if (row.kind == FactKind::Part && note)
        return &fields.stamps[row.id].place;
    if (row.kind == FactKind::Method && note)
        return &fields.stamps[row.id].ink_colour;
    if (row.kind == FactKind::Feature && note)
        return &fields.features[row.id].notes;
    if (row.kind == FactKind::Event && column == FactColumn::How)
        return &fields.events[row.index].edtf;
    if (row.kind != FactKind::Measurement)
        return nullptr;
    MeasurementField& field = fields.measurements[row.index];
    return note ? &field.how : column == FactColumn::How ? &field.value : &field.what;
}

}  // namespace

std::optional<QString> writtenAt(const FilingFields& fields, const FactRow& row, FactColumn column)
{
    if (row.kind == FactKind::NewMeasurement && column == FactColumn::What)
        return QString();
    FilingFields copy = fields;  // a stamp of which nothing was said has no facts to point at
    const std::string* text = textAt(copy, row, column);
    return text ? std::optional(QString::fromStdString(*text)) : std::nullopt;
}

void write(FilingFields& fields, const FactRow& row, FactColumn column, const QString& text)
{
    const std::string typed = text.trimmed().toStdString();
    if (row.kind == FactKind::NewMeasurement) {
        if (!typed.empty())
            fields.measurements.push_back({{}, typed, {}, {}});
        return;
    }
    if (std::string* place = textAt(fields, row, column))
        *place = typed;
    dropUnsaid(fields, row);
}

QString hintAt(const FactRow& row, FactColumn column)
{
    const bool note = column == FactColumn::Note;
    switch (row.kind) {
        case FactKind::Part:
            return note ? QObject::tr("where on it") : QString();
        case FactKind::Method:
            return note ? QObject::tr("colour") : QString();
        case FactKind::Feature:
            return note ? QObject::tr("note") : QString();
        case FactKind::Measurement:
            return note                        ? QObject::tr("how measured")
                   : column == FactColumn::How ? QObject::tr("914 mm, or 2 1/4 in")
                                               : QObject::tr("what");
        case FactKind::NewMeasurement:
            return column == FactColumn::What ? QObject::tr("one more: length, width \u2026")
                                              : QString();
        case FactKind::Event:
            return column == FactColumn::How ? QObject::tr("1940, 194X, 1940?") : QString();
        case FactKind::NewEvent:
            return column == FactColumn::What ? QObject::tr("one more: choose its kind")
                                              : QString();
        case FactKind::Heading:
        case FactKind::Age:
            break;
    }
    return {};
}

}  // namespace gui
