#pragma once

#include <QWidget>
#include <memory>
#include <vector>

#include "app/gui/filing_fields.h"
#include "models/candidates.h"
#include "models/maker_register.h"

class QComboBox;
class QFormLayout;
class QLineEdit;
class QPlainTextEdit;

namespace gui {

class MakerChoices;

// What the person concludes: maker, date, how sure they are, and why; beside or in place of what
// was concluded before. The date, and the reasons
// that were shown for it, are proposed from the maker taken until the person writes their own.
class ConclusionFields : public QWidget {
    Q_OBJECT

public:
    explicit ConclusionFields(QWidget* parent = nullptr);

    void showKnown(std::shared_ptr<const models::MakerRegister> known);
    // The makers that can be taken, likeliest first; the register's others follow by name.
    void showCandidates(const models::CandidateList& list);
    //   standing  filed conclusions that no other replaces
    //   is_filed  the record is filed, so that facts in it can only be taken back
    void show(const FilingFields& fields, const std::vector<models::AttributionRecord>& standing,
              bool is_filed);
    FilingFields putInto(FilingFields fields) const;
    void takeMaker(const QString& maker_id);  // empty: left open
    void focusWord();                         // certain, probable or possible
    void takeNoneOfThem();

Q_SIGNALS:
    void changed();  // by the person

private:
    void build();
    void listen();
    void chooseMaker(int row);
    std::string makerChosen() const;
    void proposeDate();
    void proposeReasons();
    void showStanding(const std::vector<models::AttributionRecord>& standing);

    std::shared_ptr<const models::MakerRegister> known_;
    models::CandidateList candidates_;
    MakerChoices* choices_;
    QComboBox* maker_;
    QLineEdit* date_;
    QComboBox* certainty_;
    QPlainTextEdit* reasons_;
    QComboBox* stands_;  // beside what was concluded before, or in place of which
    QLineEdit* why_changed_;
    QFormLayout* form_;
    FilingFields shown_;
    QString proposed_date_, proposed_reasons_;
    bool filling_ = false;
};

}  // namespace gui
