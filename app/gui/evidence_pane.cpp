#include "app/gui/evidence_pane.h"

#include <QLabel>
#include <QTextBrowser>
#include <QVBoxLayout>

#include "app/gui/dating_page.h"
#include "app/gui/year_bars.h"

namespace gui {

EvidencePane::EvidencePane(QWidget* parent)
    : QFrame(parent),
      heading_(new QLabel(tr("What the evidence &gives now"))),
      years_(new YearBars),
      page_(new QTextBrowser)
{
    setObjectName("evidencePane");
    heading_->setObjectName("trayTitle");
    heading_->setBuddy(page_);
    page_->setObjectName("evidence");
    page_->setAccessibleName(tr("What the evidence gives now, and why"));
    page_->setOpenLinks(false);
    page_->setTabChangesFocus(true);
    auto layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(4);
    layout->addWidget(heading_);
    layout->addWidget(years_);
    layout->addWidget(page_, 1);
    setFocusProxy(page_);
    showFolded();
}

void EvidencePane::showDating(const std::vector<models::PartDating>& parts)
{
    years_->setVisible(true);
    years_->showYears(yearsOf(parts));
    page_->setHtml(datingPage(parts));
}

void EvidencePane::showFolded()
{
    years_->setVisible(false);
    page_->setPlainText(
        tr("Folded until you have gone once through the letters; F11 unfolds what they can mean "
           "sooner, which is recorded."));
}

QString EvidencePane::text() const
{
    return page_->toPlainText();
}

}  // namespace gui
