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
  std::optional<std::string> approval_above;
};

/// A line break typed as \n on the command line becomes one.
std::string with_line_breaks(std::string text) {
  for (std::size_t at = 0; (at = text.find("\\n", at)) != std::string::npos; ++at) {
    text.replace(at, 2, "\n");
  }
  return text;
}

ClinicSettings changed(ClinicSettings settings, const Options& options) {
  if (options.name) settings.name = *options.name;
  if (options.ship_to) settings.ship_to = with_line_breaks(*options.ship_to);
  if (options.main_place) settings.main_place = *options.main_place;
  if (options.service_target) settings.service_target = *options.service_target;
  if (options.records_begin) {
    settings.records_begin.reset();
    if (!options.records_begin->empty()) {
      settings.records_begin = date_option("--records-begin", *options.records_begin);
    }
  }
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
  if (options.approval_above) {
    settings.approval_above.reset();
    if (!options.approval_above->empty()) {
      const auto limit = parse_money(*options.approval_above, settings.currency);
      if (!limit || limit->minor < 0) {
        throw WrongUse{
            fmt::format("--approval-above '{}' is not a sum of money; write for example "
                        "500.00, or '' for none.",
                        *options.approval_above)};
      }
      settings.approval_above = *limit;
    }
  }
  return settings;
}

int run(const Context& context, const Options& options) {
  const bool changes = options.name || options.ship_to || options.currency || options.main_place ||
                       options.service_target || options.records_begin || options.approval_above;
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
           {"approval_above", json_of(settings.approval_above)}});
  } else {
    std::cout << fmt::format(
        "name: {}\nship to: {}\ncurrency: {}\nmain place: {}\nservice target: {}\n"
        "records begin: {}\norders need approval above: {}\n",
        settings.name, settings.ship_to, settings.currency.code, settings.main_place,
        settings.service_target,
        settings.records_begin ? iso_text(*settings.records_begin) : "not stated",
        settings.approval_above ? text(*settings.approval_above) : "no sum is set");
  }
  return done;
}

}  // namespace

void add_clinic(CLI::App& app, Context& context) {
  auto* command = app.add_subcommand("clinic", "Show or change the clinic's own details");
  const auto options = std::make_shared<Options>();
  command->add_option("--name", options->name, "The clinic's name, for orders");
  command->add_option("--ship-to", options->ship_to, "Address for deliveries; \\n between lines");
  command->add_option("--currency", options->currency, "Three letters, such as EUR");
  command->add_option("--main-place", options->main_place, "Where orders are delivered");
  command
      ->add_option("--service-target", options->service_target,
                   "Wanted chance of not running out, such as 0.95")
      ->check(CLI::Range(0.5, 0.9999));
  command->add_option("--records-begin", options->records_begin,
                      "From this day on every ended part is in the records; '' when all are");
  command->add_option("--approval-above", options->approval_above,
                      "Orders of a larger sum need approval, such as 500.00; '' for none");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
