/// Handing a part to a patient: checked, and booked in one unit of work.
#pragma once

#include <string>
#include <vector>

#include "desk/expected_wear.hpp"
#include "desk/issue_check.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

/// What a person scans and types. What is typed must not contradict what is scanned.
struct IssueRequest {
  std::string patient;
  Side side = Side::left;
  std::string item;  ///< "" when a scan says it
  int quantity = 1;
  std::string lot;                 ///< "" for first expiry, first out, unless a scan says it
  std::string serial;              ///< "" when none, or a scan says it
  std::string place;               ///< "" for every store
  std::vector<std::string> scans;  ///< all barcodes of one package
  std::string override_by;         ///< the clinician who decides although something stops it
  std::string override_because;
};

struct IssueOutcome {
  IssueCheck check;
  bool recorded = false;
  std::vector<Unit> units;  ///< as recorded
};

/// What is typed and scanned as one question. Refuses what cannot be read or contradicts itself.
[[nodiscard]] Expected<IssueQuestion> question_of(const std::vector<Item>& catalogue,
                                                  const IssueRequest& request, Date day);

/// The records that the checks read, for one item.
[[nodiscard]] Clinic read_for_issue(const store::Snapshot& snapshot, const ItemCode& item);

/// Records units, handovers, issue movements and what reservations they use up, all or nothing; or
/// nothing where a finding stops it and no clinician is named with a reason. A share of the time is
/// not recorded: alike units in use together then alternate. `day` must not be after `today`.
/// Where a fit is at hand, `expected` says how long the part should last with this patient.
/// Throws store::StoreFailure.
[[nodiscard]] Expected<IssueOutcome> issue_part(store::Store& store, const IssueRequest& request,
                                                Date day, Date today, const std::string& who,
                                                const ExpectedWear& expected = {});

}  // namespace sparewell::desk
