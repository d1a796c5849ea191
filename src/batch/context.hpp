/// What every subcommand of sparewell-batch shares: the common options and the way in to the data.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include "batch/command_line.hpp"
#include "desk/assessment.hpp"
#include "store/open.hpp"

namespace sparewell::batch {

/// Exit status of the program.
enum ExitStatus : int {
  done = 0,
  done_with_findings = 1,  ///< also: done, but rows were refused
  wrong_use = 2,
  clinic_file_unusable = 3
};

/// A request that cannot be carried out as it was put. what() is one sentence; the status is 2.
class WrongUse : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

struct Context {
  std::string db;
  std::string today_text;
  bool json = false;
  std::function<int()> run;  ///< set by the subcommand that was named

  /// --today, or the clock's local date.
  [[nodiscard]] Date today() const;
  [[nodiscard]] std::unique_ptr<store::Store> open(store::OpenMode mode) const;
  /// The login name of whoever runs the program, for the change log.
  [[nodiscard]] store::Author author(std::string why) const;
  /// The clinic file as known at the end of `day`.
  [[nodiscard]] Clinic clinic_on(Date day) const;
  /// The clinic file with its parts forecast from today, without a proposal.
  [[nodiscard]] desk::Assessment forecast() const;
  /// The clinic file with everything computed for today.
  [[nodiscard]] desk::Assessment assess() const;
};

/// What stands against the fits, a line each; nothing when they are sound.
void print_notes(const wear::ClinicLife& fitted);

/// Reads an ISO 8601 date given on the command line. Throws WrongUse naming the option.
[[nodiscard]] Date date_option(const std::string& name, const std::string& text);

/// Reads an amount of money, 0 or more. Throws WrongUse naming the option.
[[nodiscard]] Money amount_option(std::string_view name, const std::string& text,
                                  const Currency& currency);

void add_import(Command& app, Context& context);
void add_clinic(Command& app, Context& context);
void add_forecast(Command& app, Context& context);
void add_demand(Command& app, Context& context);
void add_find(Command& app, Context& context);
void add_propose(Command& app, Context& context);
void add_what_if(Command& app, Context& context);
void add_order(Command& app, Context& context);
void add_orders(Command& app, Context& context);
void add_recall(Command& app, Context& context);
void add_issue(Command& app, Context& context);
void add_book(Command& app, Context& context);
void add_unit(Command& app, Context& context);
void add_receive(Command& app, Context& context);
void add_stock(Command& app, Context& context);
void add_place(Command& app, Context& context);
void add_restock(Command& app, Context& context);
void add_patient_place(Command& app, Context& context);
void add_suppliers(Command& app, Context& context);
void add_surprises(Command& app, Context& context);
void add_effects(Command& app, Context& context);
void add_fit(Command& app, Context& context);
void add_fit_life(Command& app, Context& context);
void add_backtest(Command& app, Context& context);
void add_simulate(Command& app, Context& context);
void add_lists(Command& app, Context& context);
void add_count(Command& app, Context& context);
void add_prices(Command& app, Context& context);
void add_claim_file(Command& app, Context& context);
void add_remittance(Command& app, Context& context);
void add_travel(Command& app, Context& context);
void add_sensitivity(Command& app, Context& context);
void add_substance(Command& app, Context& context);
void add_alternatives(Command& app, Context& context);
void add_papers(Command& app, Context& context);
void add_reaction(Command& app, Context& context);
void add_reconcile(Command& app, Context& context);
void add_month_end(Command& app, Context& context);
void add_billing_reports(Command& app, Context& context);
void add_paper(Command& app, Context& context);
void add_payer_rule(Command& app, Context& context);
void add_suspects(Command& app, Context& context);
void add_verify(Command& app, Context& context);

}  // namespace sparewell::batch
