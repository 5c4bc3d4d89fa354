#pragma once

#include <optional>

#include <QFrame>

#include "app/gui/candidate_model.h"

class QLabel;
class QPlainTextEdit;
class QTableView;

namespace gui {

// What the reading can mean, with the reasons for the row in hand beside the table, and below them
// which unread letter would settle most.
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
    // The person takes this row's maker for the record; an empty id: none of them.
    void taken(const QString& maker_id);

private:
    void showReasons();
    void take();

    CandidateModel* model_;
    QTableView* table_;
    QLabel* heading_;
    QPlainTextEdit* reasons_;
    std::optional<models::SettlingCell> settling_;
};

}  // namespace gui
