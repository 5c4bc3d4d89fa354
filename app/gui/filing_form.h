#pragma once

#include <QFrame>
#include <memory>

#include "app/gui/photo_work.h"
#include "models/candidates.h"
#include "models/maker_register.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace gui {

class MakerChoices;

// What the person says of the item when the record is filed. The date is proposed from the maker
// taken, until the person writes their own.
class FilingForm : public QFrame {
    Q_OBJECT

public:
    explicit FilingForm(QWidget* parent = nullptr);

    void showKnown(std::shared_ptr<const models::MakerRegister> known);
    // The makers that can be taken, likeliest first; the register's others follow by name.
    void showCandidates(const models::CandidateList& list);
    void showFields(const FilingFields& fields);
    FilingFields fields() const;
    void takeMaker(const QString& maker_id);  // empty: left open
    void takeNoneOfThem();
    void setFilable(bool filable, const QString& why_not);
    // Why the record cannot be filed as it stands; empty when it can.
    QString trouble() const;

Q_SIGNALS:
    void fieldsChanged();
    void fileWanted();

private:
    void build();
    void chooseMaker(int row);
    std::string makerChosen() const;
    void proposeDate();
    void showTrouble();

    std::shared_ptr<const models::MakerRegister> known_;
    models::CandidateList candidates_;
    MakerChoices* choices_;
    QLineEdit* accession_;
    QComboBox* type_;
    QComboBox* maker_;
    QLineEdit* date_;
    QComboBox* certainty_;
    QPlainTextEdit* notes_;
    QPlainTextEdit* reasons_;
    QLabel* trouble_;
    QPushButton* file_;
    QString proposed_date_;
    QString why_not_;
    bool filable_ = false;
    bool filling_ = false;
};

}  // namespace gui
