/// Columns of handovers.
#pragma once

#include "clinic/handover.hpp"
#include "clinic/say.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<Handover> {
  static constexpr Subject subject{
      to_say("handover"),
      to_say("patient, side, item, lot, serial number, day of issue and copy number")};
  static constexpr const char* name = "handovers";

  template <class Fields, class H>
  static void describe(Fields& f, H& handover) {
    f.reference("patient_id", handover.patient);
    f("side", handover.side);
    f.reference("item_id", handover.item);
    f("lot", handover.lot);
    f("serial", handover.serial);
    f("issued_on", handover.issued_on);
    f("copy", handover.copy);
    f("overridden", handover.overridden);
    f("override_by", handover.override_by);
    f("override_because", handover.override_because);
    f("printed_on", handover.printed_on);
    f("signed_on", handover.signed_on);
    f("booked_place", handover.booked_place);
    f("booked_on", handover.booked_on);
  }
};

}  // namespace sparewell::store::sqlite
