/// Stock that is away and expected back, booked: returns to suppliers and their credits, parts lent
/// to patients. As desk/stock_booking: into a unit of work that the caller opens and commits.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "desk/stock_booking.hpp"
#include "supply/lending.hpp"
#include "supply/supplier_credit.hpp"

namespace sparewell::desk {

struct ReturnRequest {
  supply::Pieces pieces;
  std::string supplier;   ///< "" for the item's own
  std::string reference;  ///< under which the supplier takes them back, or our own
  std::string credit;     ///< amount due for all pieces; "" for the unit cost
  std::string reason;
};
[[nodiscard]] Expected<Booked> book_return(store::UnitOfWork& work, const ReturnRequest& request,
                                           Date today);

struct CreditRequest {
  int number = 0;      ///< of the return
  std::string amount;  ///< "" for none
  bool is_last = false;
  bool accept_more = false;
  std::string back_to;
  std::string reason;
};
[[nodiscard]] Expected<Booked> book_credit(store::UnitOfWork& work, const CreditRequest& request,
                                           Date today);

struct LendRequest {
  supply::Pieces pieces;
  std::string patient;
  Side side = Side::left;
  Date due_on;
  std::string note;
  std::string override_by;  ///< the clinician who decides although a check stops it
  std::string override_because;
};
/// Checks the part as when it is issued (desk/issue_check): sensitivities, size, threads and
/// suspension, and the piece. What stops it is refused unless a clinician is named with a reason,
/// which the loan's note then keeps. What has to be asked is noted.
[[nodiscard]] Expected<Booked> book_loan(store::UnitOfWork& work, const LendRequest& request,
                                         Date today);

struct LoanEndRequest {
  int number = 0;  ///< of the loan
  supply::LoanEnd end;
  std::vector<std::string> serials;  ///< of the kept pieces, as far as they have one
};
/// Pieces that are kept become units of the patient, issued on the day they were lent: they have
/// been worn since.
[[nodiscard]] Expected<Booked> book_loan_end(store::UnitOfWork& work, const LoanEndRequest& request,
                                             Date today);

}  // namespace sparewell::desk
