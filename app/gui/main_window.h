#pragma once

#include <QMainWindow>
#include <functional>
#include <memory>
#include <vector>

#include "app/gui/look.h"
#include "app/gui/sitting.h"
#include "app/gui/tray.h"

class QLabel;
class QPushButton;
class QSplitter;

namespace gui {

class ArchivePane;
class CandidateList;
class FilingForm;
class HeadBar;
class HelpOverlay;
class MessageBar;
class PhotoView;
class StampView;
class ToReadList;

// The window: the stamp at full width with its cells, one tray below it at a time, sentences and
// keys around. It shows what the sitting holds, passes on what the panes ask for, and is the edge
// at which troubles become sentences.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    explicit MainWindow(SittingOptions options, QWidget* parent = nullptr);
    ~MainWindow() override;

    Sitting& sitting() { return *sitting_; }
    void openPhotos(const std::vector<std::filesystem::path>& files);
    // Asks, within the window, whether to take up what an earlier sitting left unfiled.
    void offerDrafts();
    void setLight(Light light);

protected:
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void build();
    void addTrayPages();
    void connectSitting();
    void connectPanes();
    void connectPhotoView();
    void connectSession();
    void addKeys();
    void addKey(const char* name, const QKeySequence& keys, const std::function<void()>& action);
    void guarded(const std::function<void()>& action);

    void showSession();
    QString emptyWords() const;
    void showStamp();
    void showLetters();
    void showPlace();
    void showOutlines();
    void showCandidates();
    void showFold();
    void showHints();
    void pickLayer(int layer);
    std::string layerName() const;

    void toggleTray(TrayPage page);
    void trayChanged();
    void openMeaning();
    bool mayShowCandidates() const;
    void lettersGoneThrough();
    void escape();
    void undo(bool again);
    void chooseFiles();
    void file();
    void takeMaker(const QString& maker_id);
    void search(const models::FindQuery& query);
    void openFound(const QString& id);
    bool isFiledOutline(int stamp);  // says so when it is
    void deleteOutline(int stamp);
    void moveOutline(int stamp, const vision::Quad& corners, int gesture);

    std::unique_ptr<Sitting> sitting_;
    std::unique_ptr<QObject> session_listener_;  // its end ends the connections to a session
    HeadBar* head_;
    MessageBar* message_;
    StampView* stamp_view_;
    QLabel* cell_line_;
    QPushButton* fold_;  // the edge of what stays folded until the letters are gone through
    QSplitter* splitter_;
    Tray* tray_;
    CandidateList* candidates_;
    PhotoView* photo_view_;
    ToReadList* to_read_;
    ArchivePane* archive_pane_;
    FilingForm* filing_form_;
    QLabel* hints_;
    HelpOverlay* help_;
    int layer_ = 0;  // 0: the stamp's own colours; then its layers in their order
    Light light_ = Light::Day;
    bool closing_ = false;
};

}  // namespace gui
