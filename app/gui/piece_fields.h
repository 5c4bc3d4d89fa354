#pragma once

#include <QWidget>

#include "app/gui/filing_fields.h"
#include "models/maker_register.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace gui {

// A row of a form with its words, which are the field's name for those who listen; '&' stands
// before the letter that leads to it with Alt.
void addNamedRow(QFormLayout& form, const QString& words, QWidget* field);

// What is said of the piece as a whole. Where something was lent by the item before, that is told,
// and one button leaves it out.
class PieceFields : public QWidget {
    Q_OBJECT

public:
    explicit PieceFields(QWidget* parent = nullptr);

    void showKnown(const models::MakerRegister& known);
    //   lent      what the item before lent; empty fields: nothing
    //   is_filed  the accession number stays as it was given
    void show(const FilingFields& fields, const FilingFields& lent, bool is_filed);
    FilingFields putInto(FilingFields fields) const;

Q_SIGNALS:
    void changed();  // by the person

private:
    void build();
    void tellLent();
    void leaveOut();

    QLineEdit* accession_;
    QComboBox* type_;
    QLineEdit* owner_;
    QLineEdit* condition_;
    QLineEdit* place_;
    QPlainTextEdit* notes_;
    QLabel* lent_words_;
    QPushButton* leave_out_;
    FilingFields lent_;
    bool is_filed_ = false, filling_ = false;
};

}  // namespace gui
