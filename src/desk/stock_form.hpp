/// The questions that a window asks before stock is booked, and the booking that the answers mean.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "desk/away_rows.hpp"
#include "desk/clinic_jobs.hpp"
#include "desk/day.hpp"
#include "desk/stock_booking.hpp"

namespace sparewell::desk {

/// What can be done with pieces of a lot where they lie.
enum class LotAction { move, quarantine, write_off, send_back, lend };

struct FormField {
  std::string label;  ///< with '&' before its mnemonic
  std::string value;  ///< of a closed list: one of its choices
  std::string help;
  std::vector<std::string> choices = {};
  bool closed = false;  ///< nothing but the choices is allowed
};

struct StockForm {
  std::string title;
  std::string intro;
  std::vector<FormField> fields;
  std::string go;  ///< label of the button that books
  /// Reads the answers, one for each field, and books them. A refusal writes nothing.
  std::function<Expected<Booked>(store::UnitOfWork&, const std::vector<std::string>&)> book;
  std::string why;  ///< for the change log, in English
};

/// For pieces of `level`; what lies in quarantine is released by LotAction::quarantine.
[[nodiscard]] StockForm lot_form(LotAction action, const Day& day, const StockLevel& level);
/// For a loan that ends, a credit that came, a transfer that arrived.
[[nodiscard]] StockForm away_form(const Day& day, const Away& away);

/// To record a place, or give one another sort.
[[nodiscard]] StockForm place_form(const Day& day);
/// To take one of the last bookings of the item back. Refuses when there is none that may be.
[[nodiscard]] Expected<StockForm> reversal_form(const ClinicFile& file, const ItemCode& item);

/// Books in a unit of work of its own. Throws store::StoreFailure.
[[nodiscard]] Expected<Booked> book_form(const ClinicFile& file, const StockForm& form,
                                         const std::vector<std::string>& answers);

}  // namespace sparewell::desk
