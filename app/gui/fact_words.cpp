#include "app/gui/fact_words.h"

#include <QObject>
#include <algorithm>
#include <iterator>

namespace gui {

namespace {

// In the order of the lists that a person chooses from.
constexpr models::StampPart parts_in_order[] = {
    models::StampPart::Unknown, models::StampPart::Body, models::StampPart::Fitting,
    models::StampPart::Lining, models::StampPart::Replacement};
constexpr models::StampMethod methods_in_order[] = {
    models::StampMethod::Unknown,   models::StampMethod::Ink,      models::StampMethod::Stencil,
    models::StampMethod::Impressed, models::StampMethod::Woven,    models::StampMethod::Label,
    models::StampMethod::Cast,      models::StampMethod::Engraved, models::StampMethod::Painted};

template <typename List, typename Value>
int placeOf(const List& list, Value value)
{
    return static_cast<int>(std::find(std::begin(list), std::end(list), value) - std::begin(list));
}

}  // namespace

QStringList partWords()
{
    return {QObject::tr("not said"), QObject::tr("the body"), QObject::tr("a fitting"),
            QObject::tr("the lining"), QObject::tr("a replaced part")};
}

QStringList methodWords()
{
    return {QObject::tr("not said"),  QObject::tr("ink"),      QObject::tr("stencil"),
            QObject::tr("impressed"), QObject::tr("woven"),    QObject::tr("label"),
            QObject::tr("cast"),      QObject::tr("engraved"), QObject::tr("painted")};
}

QStringList seenWords()
{
    return {QObject::tr("not looked at"), QObject::tr("present"), QObject::tr("absent"),
            QObject::tr("cannot be seen"), QObject::tr("altered later")};
}

QStringList eventWords()
{
    return {QObject::tr("made"),      QObject::tr("contract"),   QObject::tr("accepted"),
            QObject::tr("inspected"), QObject::tr("repaired"),   QObject::tr("issued"),
            QObject::tr("pattern"),   QObject::tr("disposed of")};
}

int placeOfPart(models::StampPart part)
{
    return placeOf(parts_in_order, part);
}

int placeOfMethod(models::StampMethod method)
{
    return placeOf(methods_in_order, method);
}

models::StampPart partAt(int choice)
{
    return parts_in_order[choice];
}

models::StampMethod methodAt(int choice)
{
    return methods_in_order[choice];
}

}  // namespace gui
