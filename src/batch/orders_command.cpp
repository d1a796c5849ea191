#include <algorithm>
#include <filesystem>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/write_orders.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string folder;
  bool sent = false;
};

Json json_of(const std::vector<desk::WrittenOrder>& written) {
  Json orders = Json::array();
  for (const auto& order : written) {
    orders.push_back({{"number", order.number},
                      {"supplier", order.supplier.text},
                      {"file", order.file.empty() ? Json(nullptr) : Json(order.file.string())},
                      {"waiting", order.waiting.empty() ? Json(nullptr) : Json(order.waiting)},
                      {"lines", order.lines},
                      {"pieces", order.pieces}});
  }
  return orders;
}

int run(const Context& context, const Options& options) {
  const Date day = context.today();
  const auto store = context.open(store::OpenMode::existing);
  const auto assessment =
      desk::assess(store::load_clinic(*store->read()), desk::built_in_priors(), day);
  const auto author = context.author("orders of " + iso_text(day));
  const auto written =
      desk::write_orders(*store, assessment, options.folder, author,
                         options.sent ? desk::ForSending::yes : desk::ForSending::no);
  const bool waits = std::ranges::any_of(
      written, [](const desk::WrittenOrder& order) { return !order.waiting.empty(); });
  if (options.sent) {
    std::vector<std::string> numbers;
    for (const auto& order : written) {
      if (order.waiting.empty()) numbers.push_back(order.number);
    }
    (void)desk::mark_as_sent(*store, numbers, day, author);
  }
  if (context.json) {
    print({{"today", batch::json_of(day)}, {"orders", json_of(written)}});
    return waits ? done_with_findings : done;
  }
  if (written.empty()) std::cout << "Nothing needs to be ordered.\n";
  for (const auto& order : written) {
    if (!order.waiting.empty()) {
      std::cout << order.waiting << '\n';
      continue;
    }
    std::cout << fmt::format("{}  {}: {} {}, {}\n", order.number, order.supplier.text, order.lines,
                             order.lines == 1 ? "line" : "lines", order.file.string());
  }
  return waits ? done_with_findings : done;
}

}  // namespace

void add_orders(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "orders", "Write the proposal as purchase-order workbooks, one a supplier");
  const auto options = std::make_shared<Options>();
  command->add_option("--out", options->folder, "Folder for the workbooks")->required();
  command->add_flag("--sent", options->sent,
                    "Count the orders as sent: they are on order from now on");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
