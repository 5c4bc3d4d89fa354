#pragma once

#include <QFrame>
#include <vector>

#include "models/item_dating.h"

class QLabel;
class QTextBrowser;

namespace gui {

class YearBars;

// What the evidence of the record gives as it is now, and why. Folded while the letters were not
// gone through once, since makers and years in view bend what one sees.
class EvidencePane : public QFrame {
    Q_OBJECT

public:
    explicit EvidencePane(QWidget* parent = nullptr);

    void showDating(const std::vector<models::PartDating>& parts);
    void showFolded();
    QString text() const;  // plain

private:
    QLabel* heading_;
    YearBars* years_;
    QTextBrowser* page_;
};

}  // namespace gui
