#include "app/gui/fact_rows.h"

#include <QObject>

#include "app/gui/fact_words.h"

namespace gui {

namespace {

void addFeatures(std::vector<FactRow>& rows, const FilingFields& fields,
                 const models::MakerRegister* known)
{
    rows.push_back({FactKind::Heading,
                    {},
                    0,
                    fields.type_id.empty()
                        ? QObject::tr("Details   (those of an item type, once it is said)")
                        : QObject::tr("Details")});
    if (!known)
        return;
    for (const models::Feature& feature : known->features)
        if ((!fields.type_id.empty() && feature.type_id == fields.type_id) ||
            fields.features.count(feature.feature_id))
            rows.push_back(
                {FactKind::Feature, feature.feature_id, 0, QString::fromStdString(feature.name)});
}

}  // namespace

std::vector<FactRow> factRows(const FilingFields& fields, const std::vector<std::string>& stamps,
                              const models::MakerRegister* known)
{
    std::vector<FactRow> rows;
    addFeatures(rows, fields, known);
    rows.push_back({FactKind::Heading, {}, 0, QObject::tr("Stamps")});
    for (std::size_t i = 0; i < stamps.size(); ++i) {
        const QString number = QString::number(i + 1);
        rows.push_back({FactKind::Part, stamps[i], 0, QObject::tr("Stamp %1 is on").arg(number)});
        rows.push_back({FactKind::Method, stamps[i], 0, QObject::tr("Stamp %1 is in").arg(number)});
        rows.push_back({FactKind::Age, stamps[i], 0, QObject::tr("Stamp %1 looks").arg(number)});
    }
    rows.push_back({FactKind::Heading, {}, 0, QObject::tr("Measurements")});
    for (std::size_t i = 0; i < fields.measurements.size(); ++i)
        rows.push_back({FactKind::Measurement, {}, i, {}});
    rows.push_back({FactKind::NewMeasurement, {}, fields.measurements.size(), {}});
    rows.push_back({FactKind::Heading, {}, 0, QObject::tr("Dates that stand on it, or in papers")});
    for (std::size_t i = 0; i < fields.events.size(); ++i)
        rows.push_back({FactKind::Event, {}, i, {}});
    rows.push_back({FactKind::NewEvent, {}, fields.events.size(), {}});
    return rows;
}

std::optional<FactChoice> choiceAt(const FilingFields& fields, const FactRow& row,
                                   FactColumn column, const std::vector<std::string>& stamps)
{
    const auto said = fields.stamps.find(row.id);
    const StampFacts facts = said == fields.stamps.end() ? StampFacts{} : said->second;
    const bool how = column == FactColumn::How;
    if (row.kind == FactKind::Part && how)
        return FactChoice{partWords(), placeOfPart(facts.part)};
    if (row.kind == FactKind::Method && how)
        return FactChoice{methodWords(), placeOfMethod(facts.method)};
    if (row.kind == FactKind::Age && how)
        return FactChoice{{QObject::tr("as old as its part"), QObject::tr("later added")},
                          facts.later_added ? 1 : 0};
    if (row.kind == FactKind::Feature && how) {
        const auto field = fields.features.find(row.id);
        const bool seen = field != fields.features.end() && field->second.seen;
        return FactChoice{seenWords(), seen ? static_cast<int>(*field->second.seen) + 1 : 0};
    }
    if (row.kind == FactKind::Event && column == FactColumn::What)
        return FactChoice{eventWords(), static_cast<int>(fields.events[row.index].kind)};
    if (row.kind == FactKind::NewEvent && column == FactColumn::What)
        return FactChoice{eventWords(), -1};
    if (row.kind == FactKind::Event && column == FactColumn::Note) {
        FactChoice choice{{QObject::tr("not from a stamp")}, 0};
        for (std::size_t i = 0; i < stamps.size(); ++i) {
            choice.words << QObject::tr("on stamp %1").arg(i + 1);
            if (stamps[i] == fields.events[row.index].stamp_id)
                choice.chosen = static_cast<int>(i) + 1;
        }
        return choice;
    }
    return std::nullopt;
}

void dropUnsaid(FilingFields& fields, const FactRow& row)
{
    if (const auto stamp = fields.stamps.find(row.id);
        stamp != fields.stamps.end() && stamp->second == StampFacts{})
        fields.stamps.erase(stamp);
    if (const auto feature = fields.features.find(row.id);
        feature != fields.features.end() && feature->second == FeatureField{})
        fields.features.erase(feature);
}

void choose(FilingFields& fields, const FactRow& row, FactColumn column, int choice,
            const std::vector<std::string>& stamps)
{
    const auto at = static_cast<std::size_t>(choice);
    if (row.kind == FactKind::Part)
        fields.stamps[row.id].part = partAt(choice);
    else if (row.kind == FactKind::Method)
        fields.stamps[row.id].method = methodAt(choice);
    else if (row.kind == FactKind::Age)
        fields.stamps[row.id].later_added = choice == 1;
    else if (row.kind == FactKind::Feature && choice == 0)
        fields.features[row.id].seen.reset();
    else if (row.kind == FactKind::Feature)
        fields.features[row.id].seen = static_cast<models::FeatureSeen>(choice - 1);
    else if (row.kind == FactKind::NewEvent)
        fields.events.push_back({{}, static_cast<models::EventKind>(choice), {}, {}});
    else if (column == FactColumn::What)
        fields.events[row.index].kind = static_cast<models::EventKind>(choice);
    else
        fields.events[row.index].stamp_id = choice == 0 ? std::string() : stamps[at - 1];
    dropUnsaid(fields, row);
}

void takeOut(FilingFields& fields, const FactRow& row)
{
    const auto at = static_cast<std::ptrdiff_t>(row.index);
    if (row.kind == FactKind::Measurement)
        fields.measurements.erase(fields.measurements.begin() + at);
    else if (row.kind == FactKind::Event)
        fields.events.erase(fields.events.begin() + at);
    else if (row.kind == FactKind::Feature)
        fields.features.erase(row.id);
    else
        fields.stamps.erase(row.id);
}

}  // namespace gui
