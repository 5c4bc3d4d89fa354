#include "app/gui/cautions.h"

#include <QObject>

namespace gui {

QString lampCaution()
{
    return QObject::tr(
        "With lamps: keep hot ones away from the cloth, never look into a UV lamp or its "
        "reflection, and keep its time short; local rules come first.");
}

QString handlingCaution()
{
    return QObject::tr(
        "Never wet, rub, chalk, ink or clean a mark: photograph it. Old gas masks and their bags "
        "can hold asbestos, dull paint that once glowed radium, mould harms lungs, and what may be "
        "ammunition is left for the police. Local rules and licensed people come first.");
}

}  // namespace gui
