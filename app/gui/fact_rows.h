#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "app/gui/filing_fields.h"
#include "models/maker_register.h"

namespace gui {

// What is seen on a piece, a fact a row: what it is, how it is, and a note of it.
enum class FactKind {
    Heading,
    Part,     // what a stamp sits on, and where
    Method,   // how a stamp was made, and its ink
    Age,      // whether a stamp looks later added
    Feature,  // a detail of the item type
    Measurement,
    NewMeasurement,
    Event,
    NewEvent
};

struct FactRow {
    FactKind kind = FactKind::Heading;
    std::string id;         // of a stamp (its key) or a feature
    std::size_t index = 0;  // of a measurement or an event
    QString label;

    // The same row, wherever it stands.
    bool operator==(const FactRow& other) const
    {
        return kind == other.kind && id == other.id && label == other.label;
    }
};

enum class FactColumn { What, How, Note };

// The rows in their order: the details of the item type and others that were seen, the stamps of
// these keys, measurements and dates, each with a row for one more.
std::vector<FactRow> factRows(const FilingFields& fields, const std::vector<std::string>& stamps,
                              const models::MakerRegister* known);

// What can be chosen in a cell, and what is; nothing for a cell that is written or stays empty.
struct FactChoice {
    QStringList words;
    int chosen = 0;
};
std::optional<FactChoice> choiceAt(const FilingFields& fields, const FactRow& row,
                                   FactColumn column, const std::vector<std::string>& stamps);
// Has it chosen; a choice in the row for one more makes one.
void choose(FilingFields& fields, const FactRow& row, FactColumn column, int choice,
            const std::vector<std::string>& stamps);

// What is written in a cell; nothing for one that is chosen or stays empty.
std::optional<QString> writtenAt(const FilingFields& fields, const FactRow& row, FactColumn column);
void write(FilingFields& fields, const FactRow& row, FactColumn column, const QString& text);
// What stands in an empty cell that can be written in: what belongs there.
QString hintAt(const FactRow& row, FactColumn column);

// Takes out the row's stamp or detail where nothing is said of it any more; asked after a change.
void dropUnsaid(FilingFields& fields, const FactRow& row);
// Takes out what the row says; a detail was not looked at, a stamp is as nothing said of it.
void takeOut(FilingFields& fields, const FactRow& row);

}  // namespace gui
