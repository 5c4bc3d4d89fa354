#pragma once

#include <QFrame>
#include <memory>

#include "app/gui/filing_fields.h"
#include "models/candidates.h"
#include "models/item_dating.h"
#include "models/maker_register.h"

class QBoxLayout;
class QLabel;
class QPushButton;

namespace gui {

class ConclusionFields;
class EvidencePane;
class FactTable;
class PieceFields;

// The whole record of the piece in hand: what is said of it, what is seen on it, what is concluded,
// and beside that what the evidence now gives and why.
class FilingForm : public QFrame {
    Q_OBJECT

public:
    explicit FilingForm(QWidget* parent = nullptr);

    void showKnown(std::shared_ptr<const models::MakerRegister> known);
    void showCandidates(const models::CandidateList& list);
    // What the fields stand beside.
    struct Beside {
        std::vector<std::string> stamps;  // by their keys
        FilingFields lent;                // by the item before
        std::vector<models::AttributionRecord> standing;
        bool is_filed = false;
    };
    void showFields(const FilingFields& fields, const Beside& beside);
    void showStamps(const std::vector<std::string>& stamps);
    FilingFields fields() const;
    void takeMaker(const QString& maker_id);  // empty: left open
    void takeNoneOfThem();
    void focusWord();  // how sure the person is of what they conclude
    EvidencePane& evidence() { return *evidence_; }
    void setFilable(bool filable, const QString& why_not);
    // Told beside the key that files, where nothing hinders it; empty: nothing.
    void setRemark(const QString& remark);
    // Takes over what is being written among the facts.
    void settle();
    // Why the record cannot be filed as it stands; empty when it can.
    QString trouble() const;

Q_SIGNALS:
    void fieldsChanged();
    void fileWanted();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    void alignFields();
    void showTrouble();

    PieceFields* piece_;
    ConclusionFields* conclusion_;
    FactTable* facts_;
    EvidencePane* evidence_;
    FilingFields shown_;
    QBoxLayout* columns_;  // the fields, and what is beside them
    QBoxLayout* beside_;   // facts and evidence: side by side, or one below the other
    QLabel* trouble_;
    QPushButton* file_;
    QString why_not_, remark_;
    bool filable_ = false;
};

}  // namespace gui
