#include "app/gui/dating_page.h"

#include <QObject>
#include <algorithm>
#include <numeric>

#include "models/dating_words.h"

namespace gui {

namespace {

QString escapedHtml(const std::string& text)
{
    return QString::fromStdString(text).toHtmlEscaped();
}

QString resultHtml(const models::PartDating& part)
{
    QString text = "<p><b>" + escapedHtml(part.name) + ": " +
                   escapedHtml(models::datingInWords(part.dating)) + "</b>";
    if (!part.dating.edtf.empty())
        text += "<br><small>EDTF " + escapedHtml(part.dating.edtf) + "</small>";
    return text + "</p>";
}

QString contradictionHtml(const models::Dating& dating)
{
    if (!dating.is_contradiction)
        return {};
    QString text = "<p><b>\u2260 " +
                   QObject::tr("The evidence contradicts itself (%1)")
                       .arg(escapedHtml(models::percentInWords(dating.contradiction))) +
                   "</b></p><ul>";
    for (const models::Culprit& culprit : dating.culprits)
        text += "<li>" + escapedHtml(culprit.words) + "</li>";
    return text + "</ul>";
}

QString evidenceHtml(const models::PartDating& part)
{
    std::vector<std::size_t> order(part.evidence.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return part.dating.weights[a].bits > part.dating.weights[b].bits;
    });
    QString text = order.empty() ? QString() : "<p>" + QObject::tr("because") + "</p><ul>";
    for (const std::size_t i : order) {
        const models::EvidenceWeight& weight = part.dating.weights[i];
        text +=
            "<li>" + escapedHtml(part.evidence[i].source) + ": " +
            escapedHtml(part.evidence[i].meaning) + "<br><small>" +
            QObject::tr("moved %1: %2")
                .arg(escapedHtml(models::percentInWords(weight.moved)), escapedHtml(weight.words)) +
            "</small></li>";
    }
    return order.empty() ? text : text + "</ul>";
}

QString silenceHtml(const std::vector<std::string>& silent)
{
    QString text;
    for (const std::string& one : silent)
        text += "<li>" + escapedHtml(one) + "</li>";
    return text.isEmpty() ? text
                          : "<p>" + QObject::tr("says nothing") + "</p><ul>" + text + "</ul>";
}

}  // namespace

QString datingPage(const std::vector<models::PartDating>& parts)
{
    QString page;
    for (const models::PartDating& part : parts)
        page += resultHtml(part) + contradictionHtml(part.dating) + evidenceHtml(part) +
                silenceHtml(part.silent);
    return page;
}

std::vector<models::YearShare> yearsOf(const std::vector<models::PartDating>& parts)
{
    constexpr double least_shown = 0.01;
    std::vector<models::YearShare> years;
    if (parts.empty() || parts.front().dating.edtf.empty())
        return years;
    const models::Dating& dating = parts.front().dating;
    for (std::size_t i = 0; i < dating.years.size(); ++i)
        if (dating.years[i] >= least_shown)
            years.push_back({dating.range.first + static_cast<int>(i), dating.years[i]});
    return years;
}

}  // namespace gui
