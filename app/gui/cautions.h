#pragma once

#include <QString>

// The usual cautions, said where lamps, cleaning or old equipment come up. They defer to local
// rules and licensed people; sources: ICNIRP 2004 (UV lamps), CCI Notes 13/14 (cleaning), HSE and
// defence guidance on asbestos, radium and ammunition, as README.md tells them.
namespace gui {

// Where a photograph is to be taken with other light.
QString lampCaution();

// Before a piece is handled, or a mark made clearer by hand.
QString handlingCaution();

}  // namespace gui
