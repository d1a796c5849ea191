/// sparewell-batch: the work of the program without a window.
#include <iostream>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include "batch/context.hpp"

namespace {

using namespace sparewell::batch;

/// The only place where a failure becomes words and an exit status.
int run_and_describe(const Context& context) {
  try {
    return context.run();
  } catch (const WrongUse& wrong) {
    std::cerr << wrong.what() << '\n';
    return wrong_use;
  } catch (const sparewell::store::StoreFailure& failure) {
    std::cerr << failure.what() << '\n';
    return clinic_file_unusable;
  } catch (const std::exception& failure) {
    std::cerr << failure.what() << '\n';
    return wrong_use;
  }
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{
      "Sparewell without a window: imports a clinic's files, forecasts when worn parts need "
      "replacing, and proposes and writes purchase orders. It supports and does not replace the "
      "judgement of licensed clinicians."};
  app.name("sparewell-batch");
  app.set_version_flag("--version", SPAREWELL_VERSION);
  app.require_subcommand(1);
  app.fallthrough();
  Context context;
  app.add_option("--db", context.db, "The clinic file");
  app.add_option("--today", context.today_text, "The day to work for, YYYY-MM-DD (default: now)");
  app.add_flag("--json", context.json, "Print machine-readable results");
  add_import(app, context);
  add_clinic(app, context);
  add_forecast(app, context);
  add_demand(app, context);
  add_propose(app, context);
  add_what_if(app, context);
  add_orders(app, context);
  add_order(app, context);
  add_recall(app, context);
  add_issue(app, context);
  add_book(app, context);
  add_unit(app, context);
  add_receive(app, context);
  add_stock(app, context);
  add_place(app, context);
  add_restock(app, context);
  add_patient_place(app, context);
  add_suppliers(app, context);
  add_surprises(app, context);
  add_effects(app, context);
  add_fit_life(app, context);
  add_backtest(app, context);
  add_simulate(app, context);
  add_lists(app, context);
  add_count(app, context);
  add_prices(app, context);
  add_verify(app, context);
  app.footer(
      "Exit status: 0 done, 1 done with findings or refused rows, 2 wrong use, 3 the clinic file "
      "cannot be used.");
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    const int status = app.exit(error);
    return status == 0 ? done : wrong_use;
  }
  return run_and_describe(context);
}
