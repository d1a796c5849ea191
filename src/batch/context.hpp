/// What every subcommand of sparewell-batch shares: the common options and the way in to the data.
#pragma once

#include <functional>
#include <memory>
#include <string>

#include <CLI/CLI.hpp>

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

void add_import(CLI::App& app, Context& context);
void add_clinic(CLI::App& app, Context& context);
void add_forecast(CLI::App& app, Context& context);
void add_demand(CLI::App& app, Context& context);
void add_propose(CLI::App& app, Context& context);
void add_what_if(CLI::App& app, Context& context);
void add_order(CLI::App& app, Context& context);
void add_orders(CLI::App& app, Context& context);
void add_recall(CLI::App& app, Context& context);
void add_issue(CLI::App& app, Context& context);
void add_book(CLI::App& app, Context& context);
void add_unit(CLI::App& app, Context& context);
void add_receive(CLI::App& app, Context& context);
void add_stock(CLI::App& app, Context& context);
void add_place(CLI::App& app, Context& context);
void add_restock(CLI::App& app, Context& context);
void add_patient_place(CLI::App& app, Context& context);
void add_suppliers(CLI::App& app, Context& context);
void add_surprises(CLI::App& app, Context& context);
void add_effects(CLI::App& app, Context& context);
void add_fit_life(CLI::App& app, Context& context);
void add_backtest(CLI::App& app, Context& context);
void add_simulate(CLI::App& app, Context& context);
void add_lists(CLI::App& app, Context& context);
void add_count(CLI::App& app, Context& context);
void add_prices(CLI::App& app, Context& context);
void add_verify(CLI::App& app, Context& context);

}  // namespace sparewell::batch
