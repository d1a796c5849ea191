/// Which other items could do a part's work for a patient, the most suitable first.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "care/attachment.hpp"
#include "care/chain.hpp"
#include "care/fit.hpp"
#include "care/sensitivity.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::care {

/// What the shelf, the supplier and the wear model say of an item.
struct ItemSupply {
  int on_hand = 0;                   ///< usable pieces that are promised to nobody else
  std::optional<int> expected_days;  ///< that it is expected to last with this patient
};
using SupplyOfItem = std::function<ItemSupply(const Item&)>;

struct Wanted {
  PatientRef patient;
  Side side = Side::left;
  const Item* instead_of = nullptr;  ///< nullptr where a function is missing
  Function function = Function::locking_liner;  ///< that is missing; unused beside `instead_of`
  Date day;
};

struct Alternative {
  const Item* item = nullptr;
  SensitivityVerdict verdict;  ///< the gravest
  FitCheck fit;
  std::vector<AttachmentFinding> attachment;  ///< beside what stays worn
  std::vector<Function> missing;              ///< of the chain, when it is worn
  ItemSupply supply;
};

/// Items that could do the work and are left out, by the first reason that applies.
struct LeftOut {
  int conflict = 0;  ///< of a sensitivity, that no clinician decided about
  int size = 0;      ///< the limb is outside its range
  int thread = 0;    ///< another thread than what stays worn
  int suspension = 0;  ///< no work in this suspension
};

struct Alternatives {
  std::vector<Alternative> found;
  LeftOut left_out;
};

/// Items with the same function (of the same kind, where a part has none), ranked by verdict, size,
/// chain, stock, price and wear in this order: what is known to suit before what has to be asked
/// about, what lies on the shelf before what has to be ordered, what costs less for each year that
/// it is expected to last (its price, where that is not known; prices in the clinic's currency
/// first), what lasts longer. Nothing that is not known counts as suitable without a question: it
/// ranks behind. Points into `clinic`, `rules` and the item asked about.
[[nodiscard]] Alternatives alternatives(const Clinic& clinic, const Wanted& wanted,
                                        const ChainRules& rules, const SubstanceTable& substances,
                                        const SupplyOfItem& supply);

}  // namespace sparewell::care
