#pragma once

#include <optional>

#include <QFrame>

#include "app/gui/candidate_model.h"

class QLabel;
class QPlainTextEdit;
class QTableView;

namespace gui {

class ShareBar;
class YearBars;

// What a person can make of the candidates.
enum class Conclusion {
    TakeMaker,   // of the row in hand
    NoneOfThem,  // no maker of the register made it
    LeaveOpen
};

// What the reading can mean, with the years and reasons of the row in hand beside the table, and
// the share of an unknown maker always in view above it; below, which unread letter would settle
// most.
class CandidateList : public QFrame {
    Q_OBJECT

public:
    explicit CandidateList(QWidget* parent = nullptr);

    // Keeps the row in hand on its maker where it is still listed.
    void showCandidates(const models::CandidateList& list);
    void clear();
    const CandidateModel& model() const { return *model_; }
    // The candidate in hand; nullptr for the shares without a maker.
    const models::Candidate* inHand() const;

Q_SIGNALS:
    void taken();  // the maker in hand, or left open

private:
    void fitColumns();
    void takeRow();
    void putInHand(int row);
    void showReasons();
    CandidateModel* model_;
    QTableView* table_;
    QLabel* heading_;
    ShareBar* unknown_;
    YearBars* years_;
    QPlainTextEdit* reasons_;
    std::optional<models::SettlingCell> settling_;
};

}  // namespace gui
