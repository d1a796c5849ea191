/// sparewell-batch: the work of the program without a window.
#include <iostream>

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
  CommandLine line{
      "sparewell-batch", SPAREWELL_VERSION,
      "Sparewell without a window: imports a clinic's files, forecasts when worn parts need "
      "replacing, and proposes and writes purchase orders. It supports and does not replace the "
      "judgement of licensed clinicians.",
      "Exit status: 0 done, 1 done with findings or refused rows, 2 wrong use, 3 the clinic file "
      "cannot be used."};
  Command& app = line.all();
  Context context;
  app.add_option("--db", context.db, "The clinic file");
  app.add_option("--today", context.today_text, "The day to work for, YYYY-MM-DD (default: now)");
  app.add_flag("--json", context.json, "Print machine-readable results");
  add_import(app, context);
  add_clinic(app, context);
  add_forecast(app, context);
  add_demand(app, context);
  add_find(app, context);
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
  add_claim_file(app, context);
  add_remittance(app, context);
  add_travel(app, context);
  add_sensitivity(app, context);
  add_substance(app, context);
  add_alternatives(app, context);
  add_papers(app, context);
  add_fit(app, context);
  add_reaction(app, context);
  add_reconcile(app, context);
  add_month_end(app, context);
  add_billing_reports(app, context);
  add_paper(app, context);
  add_payer_rule(app, context);
  add_suspects(app, context);
  add_verify(app, context);
  bool wrong = false;
  if (!line.read(argc, argv, wrong)) return wrong ? wrong_use : done;
  return run_and_describe(context);
}
