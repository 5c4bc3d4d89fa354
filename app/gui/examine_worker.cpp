#include "app/gui/examine_worker.h"

#include <exception>
#include <utility>

namespace gui {

namespace {

// The sentence for whatever was thrown out of a stage.
QString sentenceOf(const std::exception_ptr& thrown)
{
    try {
        std::rethrow_exception(thrown);
    } catch (const std::bad_alloc&) {
        return QObject::tr(
            "There is not enough memory for this picture; close other programs or "
            "make the picture smaller.");
    } catch (const std::exception& error) {
        return QString::fromUtf8(error.what());
    } catch (...) {
        return QObject::tr("The picture could not be examined, for a reason nobody foresaw.");
    }
}

}  // namespace

ExamineWorker::ExamineWorker(MakeExaminer make, QObject* parent)
    : QObject(parent), make_(std::move(make))
{
    inside_.moveToThread(&thread_);
    thread_.setObjectName("examining");
    QMetaObject::invokeMethod(&inside_, [this] {
        try {
            prepare();
        } catch (...) {
            Q_EMIT failed(0, sentenceOf(std::current_exception()));
        }
    });
}

void ExamineWorker::begin()
{
    thread_.start();
}

ExamineWorker::~ExamineWorker()
{
    cancelAll();
    thread_.quit();
    thread_.wait();
}

void ExamineWorker::prepare()
{
    if (examiner_)
        return;
    examiner_ = std::make_shared<Examiner>(make_());
    Q_EMIT ready(examiner_->known);
    for (const std::string& trouble : examiner_->troubles)
        Q_EMIT failed(0, QString::fromStdString(trouble));
}

int ExamineWorker::start(Task task)
{
    const int ticket = ++last_ticket_;
    std::stop_source source;
    running_.emplace(ticket, source);
    QMetaObject::invokeMethod(
        &inside_, [this, ticket, task = std::move(task), stop = source.get_token()] {
            perform(ticket, task, stop);
            QMetaObject::invokeMethod(this, [this, ticket] { finish(ticket); });
        });
    return ticket;
}

void ExamineWorker::perform(int ticket, const Task& task, std::stop_token stop)
{
    if (stop.stop_requested()) {
        Q_EMIT gaveUp(ticket);
        return;
    }
    try {
        prepare();
        task(ticket, stop);
    } catch (const flow::Cancelled&) {
        Q_EMIT gaveUp(ticket);
    } catch (...) {
        Q_EMIT failed(ticket, sentenceOf(std::current_exception()));
    }
}

void ExamineWorker::finish(int ticket)
{
    running_.erase(ticket);
    if (running_.empty())
        Q_EMIT idle();
}

int ExamineWorker::examinePhoto(const std::filesystem::path& file, const std::string& type_id)
{
    return start([this, file, type_id](int ticket, std::stop_token stop) {
        flow::ExamineOptions options;
        options.type_id = type_id;
        const auto tell = [&](const std::string& stage, double done) {
            Q_EMIT progressed(ticket, QString::fromStdString(stage), done);
        };
        auto examination = examiner_->examinePhoto(file, options, stop, tell);
        if (stop.stop_requested())
            throw flow::Cancelled{};
        Q_EMIT photoExamined(ticket,
                             std::make_shared<const flow::Examination>(std::move(examination)));
    });
}

int ExamineWorker::examineOutlines(const std::filesystem::path& file,
                                   const std::vector<StampRequest>& stamps,
                                   const std::string& type_id)
{
    return start([this, file, stamps, type_id](int ticket, std::stop_token stop) {
        flow::ExamineOptions options;
        options.type_id = type_id;
        flow::Examination examination;
        Q_EMIT progressed(ticket, tr("loading the photo"), 0);
        examination.photo = examiner_->loadPhoto(file);
        for (const StampRequest& stamp : stamps) {
            if (stop.stop_requested())
                throw flow::Cancelled{};
            const double done = static_cast<double>(examination.stamps.size() + 1) /
                                static_cast<double>(stamps.size() + 1);
            Q_EMIT progressed(ticket, tr("reading the stamps"), done);
            options.mirrored = stamp.mirrored;
            examination.stamps.push_back(
                examiner_->examineStamp(examination.photo, stamp.outline, options, stop));
        }
        if (stop.stop_requested())
            throw flow::Cancelled{};
        Q_EMIT photoExamined(ticket,
                             std::make_shared<const flow::Examination>(std::move(examination)));
    });
}

int ExamineWorker::examineStamp(const vision::Photo& photo, const StampRequest& stamp,
                                const std::string& type_id)
{
    return start([this, photo, stamp, type_id](int ticket, std::stop_token stop_asked) {
        flow::ExamineOptions options;
        options.type_id = type_id;
        options.mirrored = stamp.mirrored;
        Q_EMIT progressed(ticket, tr("reading the stamp again"), 0);
        auto examination = examiner_->examineStamp(photo, stamp.outline, options, stop_asked);
        if (stop_asked.stop_requested())
            throw flow::Cancelled{};
        Q_EMIT stampExamined(
            ticket, std::make_shared<const flow::StampExamination>(std::move(examination)));
    });
}

int ExamineWorker::rankReadings(const std::vector<models::Reading>& readings,
                                const std::string& type_id)
{
    return start([this, readings, type_id](int ticket, std::stop_token stop) {
        auto list = examiner_->rankReadings(readings, type_id);
        if (stop.stop_requested())
            throw flow::Cancelled{};
        Q_EMIT ranked(ticket, std::make_shared<const models::CandidateList>(std::move(list)));
    });
}

void ExamineWorker::cancel(int ticket)
{
    const auto found = running_.find(ticket);
    if (found != running_.end())
        found->second.request_stop();
}

void ExamineWorker::cancelAll()
{
    for (auto& [ticket, source] : running_)
        source.request_stop();
}

}  // namespace gui
