#include "desk/deliveries_page.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/order_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::OrderStage;

std::string view_id(const OrderView& view) {
  return fmt::format("{}\n{}", view.order.supplier.text, view.order.ref);
}

Cell number_cell(int number) {
  return {number_words(number), static_cast<double>(number)};
}

Cell day_cell(const std::optional<Date>& date) {
  if (!date) return {};
  return {date_words(*date), static_cast<double>(date->time_since_epoch().count())};
}

bool is_draft(OrderStage stage) {
  return stage == OrderStage::draft || stage == OrderStage::waiting_for_approval;
}

TableRow line_row(const Day& day, const OrderView& view, std::size_t at) {
  const OrderLine& line = view.order.lines[at];
  const Item* item = day.index().item(line.item);
  TableRow row;
  row.id = line.item.text;
  row.cells = {
      {item ? fmt::format("{}  {}", line.item.text, item->description) : line.item.text, {}},
      number_cell(line.quantity),
      number_cell(line.received_quantity),
      number_cell(line.outstanding()),
      {line_state_words(view, at), {}},
      {line_for_words(view.order, line), {}}};
  row.strong = view.expected[at] && view.expected[at]->overdue_days > 0;
  return row;
}

std::string header_words(const OrderHeader& header) {
  std::string text;
  if (header.approved_on) {
    text += say(" Approved by {} on {} at {}.", header.approved_by, date_words(*header.approved_on),
                approved_sum_words(header));
  }
  if (header.cancelled_on) {
    text += say(" Cancelled on {}: {}.", date_words(*header.cancelled_on), header.cancelled_why);
  }
  return text;
}

}  // namespace

DeliveriesPage::DeliveriesPage()
    : table_{
          {{said("Order"), 14, Align::left, said("The order's number")},
           {said("Supplier"), 18, Align::left, "", 1},
           {said("State"), 34, Align::left, said("How far the order is"), 1},
           {said("Expected"), 12, Align::left, said("The next day on which something should come")},
           {said("To come"), 8, Align::right, said("Pieces still to come")}}} {}

TableRow DeliveriesPage::order_row(const OrderView& view) const {
  TableRow row;
  row.id = view_id(view);
  row.cells = {{view.order.ref, {}},
               {view.order.supplier.text, {}},
               {view_stage_words(view), {}},
               day_cell(view.expected_on),
               number_cell(view.order.outstanding())};
  auto words =
      fmt::format("{} {} {}", view.order.ref, view.order.supplier.text, view_stage_words(view));
  for (const auto& line : view.order.lines) {
    words += fmt::format(" {}", line.item.text);
    if (const Item* item = day_->index().item(line.item)) {
      words += fmt::format(" {}", item->description);
    }
  }
  row.search = folded(words);
  row.marks = view.is_open() ? is_open : 0;
  row.strong = view.overdue_days > 0;
  return row;
}

void DeliveriesPage::show(DayPtr day) {
  day_ = std::move(day);
  views_ = order_views(day_->clinic(), day_->today());
  std::vector<TableRow> rows;
  for (const auto& view : views_) rows.push_back(order_row(view));
  table_.fill(std::move(rows));
}

std::string DeliveriesPage::count_shown() const {
  const auto overdue =
      std::ranges::count_if(views_, [](const OrderView& view) { return view.overdue_days > 0; });
  auto text = count_words(std::ssize(views_), "order", "orders");
  if (table_.size() != table_.total()) {
    text = say("{} of {}", number_words(static_cast<long long>(table_.size())), text);
  }
  if (overdue > 0) text += say(", {} overdue", number_words(overdue));
  return text;
}

std::string DeliveriesPage::empty_words() const {
  if (!day_) return said("Open a clinic file to see its orders.");
  if (table_.total() == 0)
    return said("There are no orders yet. Write them on the page \"Order today\".");
  return said("No order answers to what you asked for.");
}

const OrderView* DeliveriesPage::view(const std::string& id) const {
  const auto found =
      std::ranges::find_if(views_, [&](const OrderView& view) { return view_id(view) == id; });
  return found == views_.end() ? nullptr : &*found;
}

std::string DeliveriesPage::id_of(const OrderName& name) {
  return fmt::format("{}\n{}", name.supplier, name.ref);
}

OrderName DeliveriesPage::name(const std::string& id) const {
  const auto* chosen = view(id);
  if (!chosen) return {};
  return {chosen->order.ref, chosen->order.supplier.text};
}

std::vector<const OrderRevision*> DeliveriesPage::kept(const OrderView& view) const {
  std::vector<const OrderRevision*> made;
  for (const auto& revision : day_->clinic().order_revisions) {
    if (revision.order_ref == view.order.ref && revision.supplier == view.order.supplier) {
      made.push_back(&revision);
    }
  }
  std::ranges::sort(made, std::ranges::greater{}, &OrderRevision::revision);
  return made;
}

std::vector<std::string> DeliveriesPage::revisions(const std::string& id) const {
  std::vector<std::string> made;
  const auto* chosen = view(id);
  if (!chosen) return made;
  for (const auto* revision : kept(*chosen)) {
    const auto on = date_words(revision->made_on);
    const auto why = said(revision->why.c_str());
    made.push_back(
        revision->made_by.empty()
            ? say("Revision {}, {}: {}", revision->revision, on, why)
            : say("Revision {}, {}, {}: {}", revision->revision, on, revision->made_by, why));
  }
  return made;
}

DeliveryDetail DeliveriesPage::detail(const std::string& id) const {
  DeliveryDetail made;
  const auto* chosen = view(id);
  if (!chosen) return made;
  const auto& order = chosen->order;
  made.title = fmt::format("{}  {}: {}", order.ref, order.supplier.text, view_stage_words(*chosen));
  const auto& header = order.header;
  made.summary = header && header->placed_on ? say("Placed on {}.", date_words(*header->placed_on))
                 : is_draft(chosen->stage)
                     ? say("Written on {}.", date_words(chosen->created_on()))
                     : say("Ordered on {}.", date_words(chosen->created_on()));
  if (header) made.summary += header_words(*header);
  const auto& limit = day_->clinic().settings.approval_above;
  if (chosen->stage == OrderStage::waiting_for_approval && limit) {
    made.summary += fmt::format(" {}", capitalised(worth_sentence(order, *limit)));
  }
  if (const auto latest = revisions(id); latest.size() > 1) {
    made.summary += fmt::format(" {}.", latest.front());
  }
  for (std::size_t i = 0; i < order.lines.size(); ++i) {
    made.lines.push_back(line_row(*day_, *chosen, i));
  }
  return made;
}

OrderActions DeliveriesPage::actions(const std::string& id) const {
  OrderActions made;
  const auto* chosen = view(id);
  if (!chosen) return made;
  made.place = chosen->stage == OrderStage::draft;
  made.approve = is_draft(chosen->stage);
  made.amend = chosen->is_open();
  made.cancel = chosen->is_open();
  made.back_order = chosen->order.outstanding() > 0;
  made.reprint = !kept(*chosen).empty();
  return made;
}

std::vector<Column> DeliveriesPage::line_columns() {
  return {{said("Item"), 24, Align::left, "", 2},
          {said("Ordered"), 6, Align::right, ""},
          {said("Received"), 7, Align::right, ""},
          {said("To come"), 6, Align::right, ""},
          {said("Promised or expected"), 20, Align::left, "", 2},
          {said("For"), 10, Align::left, said("Patients whom the pieces are for"), 1}};
}

}  // namespace sparewell::desk
