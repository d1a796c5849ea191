#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::optional<std::string> name;
  std::optional<std::string> ship_to;
  std::optional<std::string> currency;
  std::optional<std::string> main_place;
  std::optional<double> service_target;
  std::optional<std::string> records_begin;
  std::optional<std::string> shortage_cost;
  std::optional<double> holding_rate;
  std::optional<std::string> line_cost;
  std::optional<std::string> approval_above;
  std::optional<std::string> billing_begins;
  std::optional<std::string> papers_begin;
};

/// Nothing for an empty text.
std::optional<Money> cost_option(std::string_view option, const std::string& text,
                                 const Currency& currency) {
  if (text.empty()) return std::nullopt;
  return amount_option(option, text, currency);
}

/// A line break typed as \n on the command line becomes one.
std::string with_line_breaks(std::string text) {
  for (std::size_t at = 0; (at = text.find("\\n", at)) != std::string::npos; ++at) {
    text.replace(at, 2, 1, '\n');
  }
  return text;
}

/// An empty text says that no day is stated.
void change_day(std::optional<Date>& day, const std::string& option,
                const std::optional<std::string>& text) {
  if (!text) return;
  day.reset();
  if (!text->empty()) day = date_option(option, *text);
}

std::string day_words(const std::optional<Date>& day) {
  return day ? iso_text(*day) : "not stated";
}

ClinicSettings changed(ClinicSettings settings, const Options& options) {
  if (options.name) settings.name = *options.name;
  if (options.ship_to) settings.ship_to = with_line_breaks(*options.ship_to);
  if (options.main_place) settings.main_place = *options.main_place;
  if (options.service_target) settings.service_target = *options.service_target;
  change_day(settings.records_begin, "--records-begin", options.records_begin);
  change_day(settings.billing_begins, "--billing-begins", options.billing_begins);
  change_day(settings.papers_begin, "--papers-begin", options.papers_begin);
  if (options.currency) {
    const auto currency = parse_currency(*options.currency);
    if (!currency) {
      throw WrongUse{
          fmt::format("--currency '{}' is not a currency code; write three letters "
                      "such as EUR.",
                      *options.currency)};
    }
    settings.currency = *currency;
  }
  if (options.holding_rate) settings.costs.holding_rate = *options.holding_rate;
  if (options.shortage_cost) {
    settings.costs.shortage =
        cost_option("--shortage-cost", *options.shortage_cost, settings.currency);
  }
  if (options.line_cost) {
    settings.costs.line = cost_option("--line-cost", *options.line_cost, settings.currency);
  }
  if (options.approval_above) {
    settings.approval_above =
        cost_option("--approval-above", *options.approval_above, settings.currency);
  }
  return settings;
}

int run(const Context& context, const Options& options) {
  const bool changes = options.name || options.ship_to || options.currency || options.main_place ||
                       options.service_target || options.records_begin || options.shortage_cost ||
                       options.holding_rate || options.line_cost || options.approval_above ||
                       options.billing_begins || options.papers_begin;
  const auto store = context.open(changes ? store::OpenMode::create : store::OpenMode::existing);
  const ClinicSettings before = store->read()->settings();
  const ClinicSettings settings = changed(before, options);
  if (settings != before) {
    const auto work = store->begin_write(context.author("clinic details"));
    work->save(settings);
    work->commit();
  }
  if (context.json) {
    print({{"name", settings.name},
           {"ship_to", settings.ship_to},
           {"currency", settings.currency.code},
           {"main_place", settings.main_place},
           {"service_target", settings.service_target},
           {"records_begin", json_of(settings.records_begin)},
           {"holding_rate", settings.costs.holding_rate},
           {"shortage_cost", json_of(settings.costs.shortage)},
           {"line_cost", json_of(settings.costs.line)},
           {"approval_above", json_of(settings.approval_above)},
           {"billing_begins", json_of(settings.billing_begins)},
           {"papers_begin", json_of(settings.papers_begin)}});
  } else {
    std::cout << fmt::format(
        "name: {}\nship to: {}\ncurrency: {}\nmain place: {}\nservice target: {}\n"
        "records begin: {}\ncost of a missing piece: {}\n"
        "keeping a piece for a year: {:.4g} % of its price\ncost of an order line: {}\n"
        "orders need approval above: {}\nbilling begins: {}\npapers begin: {}\n",
        settings.name, settings.ship_to, settings.currency.code, settings.main_place,
        settings.service_target, day_words(settings.records_begin),
        settings.costs.shortage ? text(*settings.costs.shortage) : "not stated",
        100 * settings.costs.holding_rate,
        settings.costs.line ? text(*settings.costs.line) : "not stated",
        settings.approval_above ? text(*settings.approval_above) : "no sum is set",
        day_words(settings.billing_begins), day_words(settings.papers_begin));
  }
  return done;
}

}  // namespace

void add_clinic(Command& app, Context& context) {
  auto* command = app.add_subcommand("clinic", "Show or change the clinic's own details");
  const auto options = std::make_shared<Options>();
  command->add_option("--name", options->name, "The clinic's name, for orders");
  command->add_option("--ship-to", options->ship_to, "Address for deliveries; \\n between lines");
  command->add_option("--currency", options->currency, "Three letters, such as EUR");
  command->add_option("--main-place", options->main_place, "Where orders are delivered");
  command
      ->add_option("--service-target", options->service_target,
                   "Wanted chance of not running out, such as 0.95")
      ->within(0.5, 0.9999);
  command->add_option("--records-begin", options->records_begin,
                      "From this day on every ended part is in the records; '' when all are");
  command->add_option(
      "--shortage-cost", options->shortage_cost,
      "Cost of a piece that is missing when needed; '' to go by the service target");
  command
      ->add_option("--holding-rate", options->holding_rate,
                   "Cost of keeping a piece for a year, as a share of its price, such as 0.2")
      ->within(0.0, 1.0);
  command->add_option("--line-cost", options->line_cost,
                      "Cost of the work on one more order line; '' for none");
  command->add_option("--approval-above", options->approval_above,
                      "Orders of a larger sum need approval, such as 500.00; '' for none");
  command->add_option("--billing-begins", options->billing_begins,
                      "What was handed out from this day on is compared with claims; '' from the "
                      "first service billed");
  command->add_option("--papers-begin", options->papers_begin,
                      "From this day on papers and signed sheets are put on record; '' when they "
                      "lie elsewhere");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
