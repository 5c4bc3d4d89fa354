#pragma once

#include <QFrame>
#include <QTimer>
#include <vector>

#include "app/gui/found_model.h"

class QLabel;
class QLineEdit;
class QTableView;
class QTextBrowser;

namespace gui {

// Finds records: words (the typed notation is understood), maker, years; the record in hand is
// told beside the table.
class ArchivePane : public QFrame {
    Q_OBJECT

public:
    explicit ArchivePane(QWidget* parent = nullptr);

    models::FindQuery query() const;
    void showFound(std::vector<models::FoundItem> found);
    void showRecord(const QString& html);
    const FoundModel& model() const { return *model_; }
    void searchNow();
    QString idInHand() const;

Q_SIGNALS:
    void searched(const models::FindQuery& query);
    void looked(const QString& id);  // the row in hand changed; empty: none
    void opened(const QString& id);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void build();

    FoundModel* model_;
    QLineEdit* words_;
    QLineEdit* maker_;
    QLineEdit* from_;
    QLineEdit* to_;
    QLabel* count_;
    QTableView* table_;
    QTextBrowser* record_;
    QTimer pause_;  // searching waits for a pause in typing
};

}  // namespace gui
