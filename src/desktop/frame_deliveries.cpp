#include <fmt/format.h>
#include <wx/stdpaths.h>

#include "clinic/say.hpp"
#include "desk/order_jobs.hpp"
#include "desktop/dialogs/order_dialogs.hpp"
#include "desktop/dialogs/receive_dialog.hpp"
#include "desktop/dialogs/scan_dialog.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/pages/deliveries_panel.hpp"
#include "desktop/text.hpp"
#include "desktop/widgets/aside.hpp"
#include "desktop/widgets/note_bar.hpp"

namespace sparewell::desktop {

std::string MainFrame::change_order(const desk::OrderChange& change) {
  const auto made = aside([file = file_, &change] { return desk::change_order(file, change); });
  if (!made) return made.error().sentence;
  order_news_ = made->sentence;
  return {};
}

void MainFrame::tell_order_news() {
  if (!order_news_.empty()) undo_.did_for_good(say("an order was changed"));
  if (order_news_.empty()) return;
  note_->say(order_news_, {});
  order_news_.clear();
  read_again();
}

void MainFrame::receive_delivery() {
  desk::ReceiveForm form;
  if (deliveries_->actions().back_order) {  // something of the chosen order is still to come
    const auto name = deliveries_->page().name(deliveries_->order());
    form.order_ref = name.ref;
    form.supplier = name.supplier;
  }
  form.place = day_->clinic().settings.main_place;
  const auto book = [this](const desk::ReceivingRequest& request) {
    return aside([file = file_, &request] { return desk::book_delivery(file, request); });
  };
  const auto tell = [this](const std::vector<std::string>& booked) {
    for (const auto& line : booked) {
      order_news_ += fmt::format("{}{}", order_news_.empty() ? "" : "\n", line);
    }
  };
  ScanDialog scanning{
      this,
      form.order_ref.empty()
          ? std::string{said("Receive by scanning")}
          : say("Receive by scanning: order {} of {}", form.order_ref, form.supplier),
      desk::ScanTray{day_, form.order_ref, form.supplier, form.place}, file_.path, book};
  scanning.ShowModal();
  tell(scanning.booked());
  if (const auto count = scanning.unbooked(); count > 0) {
    note_->say(say_n("{} scan is not booked. It is kept: Receive brings it back.",
                     "{} scans are not booked. They are kept: Receive brings them back.",
                     static_cast<unsigned long>(count), count),
               {{said("&Receive..."), [this] { run(desk::Command::receive_delivery); }}});
  }
  if (scanning.by_hand()) {
    ReceiveDialog dialog{this,        std::move(form), day_->clinic().items,
                         file_.today, file_.path,      book};
    dialog.ShowModal();
    tell(dialog.booked());
  }
  tell_order_news();
}

void MainFrame::place_order() {
  const auto name = deliveries_->page().name(deliveries_->order());
  auto news = std::make_shared<std::string>();
  start_job({said("Placing the order"), false,
             [file = file_, name, news](const desk::JobControl&) {
               const auto made = desk::change_order(file, [&](auto& store, const auto& at) {
                 return desk::place_order(store, name, at);
               });
               *news = made ? made->sentence : made.error().sentence;
             },
             [this, news](const desk::JobEnd& end) {
               if (say_failure(end)) return;
               order_news_ = *news;
               tell_order_news();
             }});
}

void MainFrame::approve_order() {
  const auto name = deliveries_->page().name(deliveries_->order());
  SentenceDialog dialog{
      this,
      {say("Approve order {}", name.ref), deliveries_->page().detail(deliveries_->order()).summary,
       said("&Approved by"), said("The name of the person who approves the order"),
       said("&Approve")},
      [&](const std::string& by) {
        return change_order(
            [&](auto& store, const auto& at) { return desk::approve_order(store, name, by, at); });
      }};
  if (dialog.ShowModal() == wxID_OK) tell_order_news();
}

void MainFrame::cancel_order() {
  const auto name = deliveries_->page().name(deliveries_->order());
  SentenceDialog dialog{
      this,
      {say("Cancel order {}", name.ref),
       said("What has not come is cancelled; what has come stays. Tell the supplier."),
       said("&Why"), said("Kept with the order"), said("&Cancel the order")},
      [&](const std::string& why) {
        return change_order(
            [&](auto& store, const auto& at) { return desk::cancel_order(store, name, why, at); });
      }};
  if (dialog.ShowModal() == wxID_OK) tell_order_news();
}

void MainFrame::amend_line() {
  const auto name = deliveries_->page().name(deliveries_->order());
  const auto* view = deliveries_->page().view(deliveries_->order());
  int quantity = 0;
  for (const auto& line : view->order.lines) {
    if (line.item.text == deliveries_->item()) quantity = line.quantity;
  }
  const bool placed = !deliveries_->actions().approve;
  AmendDialog dialog{
      this, name.ref, deliveries_->item(), quantity, placed, [&](const desk::Amendment& amendment) {
        return change_order([&](auto& store, const auto& at) {
          return desk::amend_order(store, name, amendment, at);
        });
      }};
  if (dialog.ShowModal() == wxID_OK) tell_order_news();
}

void MainFrame::back_order() {
  const auto name = deliveries_->page().name(deliveries_->order());
  BackOrderDialog dialog{this, name.ref, deliveries_->item(), [&](const BackOrder& given) {
                           return change_order([&](auto& store, const auto& at) {
                             return desk::back_order(store, name, {given.item}, given.until,
                                                     given.why, at);
                           });
                         }};
  if (dialog.ShowModal() == wxID_OK) tell_order_news();
}

void MainFrame::reprint_order() {
  const auto name = deliveries_->page().name(deliveries_->order());
  const auto revisions = deliveries_->page().revisions(deliveries_->order());
  auto folder = remembered_.orders_folder;
  if (folder.empty()) {
    folder = fmt::format("{}/{}", from_wx(wxStandardPaths::Get().GetDocumentsDir()),
                         said("Sparewell orders"));
  }
  ReprintDialog dialog{this, name.ref, revisions, folder, [&](const Reprint& given) -> std::string {
                         const int revision = static_cast<int>(revisions.size()) - given.position;
                         const auto made = aside([file = file_, &name, revision, &given] {
                           return desk::write_again(file, name, revision, given.folder);
                         });
                         if (!made) return made.error().sentence;
                         order_news_ = say("Revision {} of order {} was written: {}",
                                           made->revision, name.ref, made->file.string());
                         return {};
                       }};
  if (dialog.ShowModal() != wxID_OK) return;
  note_->say(order_news_, {});
  order_news_.clear();
}

}  // namespace sparewell::desktop
