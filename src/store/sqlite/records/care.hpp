/// Columns of what is decided and known about sensitivities.
#pragma once

#include "clinic/clinic.hpp"
#include "clinic/say.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<SensitivityDecision> {
  static constexpr Subject subject{to_say("decision"), to_say("patient, item, substance and day")};
  static constexpr const char* name = "sensitivity_decisions";

  template <class Fields, class D>
  static void describe(Fields& f, D& decision) {
    f.reference("patient_id", decision.patient);
    f.reference("item_id", decision.item);
    f("substance", decision.substance);
    f("verdict", decision.verdict);
    f("decided_on", decision.decided_on);
    f("decided_by", decision.decided_by);
    f("reason", decision.reason);
    f("withdrawn_on", decision.withdrawn_on);
  }
};

template <>
struct Table<SubstanceRow> {
  static constexpr Subject subject{to_say("substance relation"),
                                   to_say("both substances and the relation")};
  static constexpr const char* name = "substance_relations";

  template <class Fields, class R>
  static void describe(Fields& f, R& row) {
    f("substance", row.substance);
    f("relation", row.relation);
    f("other", row.other);
    f("source", row.source);
    f("withdrawn_on", row.withdrawn_on);
  }
};

}  // namespace sparewell::store::sqlite
