/// Columns of units.
#pragma once

#include "clinic/say.hpp"
#include "clinic/unit.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<Unit> {
  static constexpr Subject subject{
      to_say("unit"),
      to_say("patient, side, item, lot, serial number, day of issue and copy number")};
  static constexpr const char* name = "units";

  template <class Fields, class U>
  static void describe(Fields& f, U& unit) {
    f.reference("patient_id", unit.patient);
    f("side", unit.side);
    f.reference("item_id", unit.item);
    f("lot", unit.lot);
    f("serial", unit.serial);
    f("issued_on", unit.issued_on);
    f("ended_on", unit.ended_on);
    f("end_reason", unit.end_reason);
    f("share", unit.share);
    f("copy", unit.copy);
  }
};

}  // namespace sparewell::store::sqlite
